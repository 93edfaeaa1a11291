package fermata.analysis.hold.sequence;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;

/**
 * A stretch of a last layer: all that orients it, or all that permutes it, without the adjustments before and after.
 * Told without knowing how the cube was held, so that what a solver repeats is found whatever the holds.
 *
 * @param from its first turn in the solve
 * @param to one past its last
 */
record LastLayerPiece(int from, int to) {
    /** Shorter pieces are found by chance too often to say anything. */
    static final int SHORTEST = 5;

    LastLayerPiece {
        if (from < 0 || to - from < SHORTEST) {
            throw new IllegalArgumentException("a piece from turn " + from + " to before turn " + to
                    + ": turns count from 0, and fewer than " + SHORTEST + " are met by chance");
        }
    }

    /**
     * The pieces of a solve, in order; those too short to say anything are left out. Cost: linear in turns, some 100
     * steps each.
     *
     * @param start the state before the first turn, seen against the centres
     * @param turns in the core frame, the two quarters of a half turn taken together
     */
    static List<LastLayerPiece> of(CubeState start, List<Turn> turns) {
        StreamFacts facts = new StreamFacts(start, turns);
        int orient = Tilting.first(facts, StreamFacts.Phase.ORIENT);
        int permute = Tilting.first(facts, StreamFacts.Phase.PERMUTE);
        List<LastLayerPiece> pieces = new ArrayList<>();
        addTo(pieces, turns, facts.crossFace.opposite(), orient, permute);
        addTo(pieces, turns, facts.crossFace.opposite(), permute, turns.size());
        return pieces;
    }

    private static void addTo(List<LastLayerPiece> pieces, List<Turn> turns, Face last, int begun, int ended) {
        int from = begun;
        int to = ended;
        while (from < to && turns.get(from).face() == last) {
            from++;
        }
        while (from < to && turns.get(to - 1).face() == last) {
            to--;
        }
        if (to - from >= SHORTEST) {
            pieces.add(new LastLayerPiece(from, to));
        }
    }
}
