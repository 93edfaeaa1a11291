package fermata.analysis.hold.sequence;

import fermata.analysis.goal.PairGrowth;
import fermata.analysis.goal.PiecesHome;
import fermata.decoder.cube.Axis;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;

/**
 * What the whole stream of a solve says about where the solver was, before any hold is known: the cross face,
 * the phase and the pair at work at each turn. All in the core frame, so the same for every hold.
 *
 * <p>The cross face is the one whose cross and pairs come first on the whole, as {@link PairGrowth} reads them; over a
 * line where edges were oriented first. Cost: linear in turns, some 100 steps each.
 */
public final class StreamFacts {
    /** Until the cross stands (or what else comes before the first pair), until four pairs stand, until the
     * last layer is oriented, after that. */
    public enum Phase {
        CROSS,
        PAIRS,
        ORIENT,
        PERMUTE
    }

    /** Where in its stretch of work (a cross, a pair, a last-layer step) a turn stands. */
    public enum Place {
        FIRST,
        SECOND,
        LAST,
        AMID
    }

    private static final int PAIRS = 4;
    /** A solver may break the orientation for one pair; one who has it by chance for the last pair never sought it. */
    private static final double NEARLY_ALL = 0.8;

    public final List<Turn> turns;
    public final Face crossFace;
    /** When the cross, or the line, stood, and 1 to 4 pairs with it; turns + 1 if never. */
    private final int[] reached = new int[PAIRS + 1];

    private PairGrowth growth;
    private int oriented;
    private final Phase[] phases;
    private final Place[] places;
    private final int[] stretches;
    private final Axis idle;

    /**
     * Reads a solve once. Cost: linear in turns, some 100 steps each.
     *
     * @param start the state before the first turn, seen against the centres
     * @param turns in the core frame, to the solved cube or not
     */
    public StreamFacts(CubeState start, List<Turn> turns) {
        this.turns = turns;
        List<CubeState> states = new ArrayList<>();
        states.add(start);
        for (Turn turn : turns) {
            states.add(states.get(states.size() - 1).apply(turn));
        }
        PiecesHome home = new PiecesHome(start, turns);
        Face best = Face.values()[0];
        PairGrowth soonest = over(home, best);
        for (Face face : Face.values()) {
            PairGrowth over = over(home, face);
            if (over.sumOfTimes() < soonest.sumOfTimes()) {
                best = face;
                soonest = over;
            }
        }
        this.crossFace = best;
        this.stretches = new int[turns.size()];
        this.phases = new Phase[turns.size()];
        this.places = new Place[turns.size()];
        settle(states, soonest);
        this.idle = orientedAxis(states);
        if (idle != null) {
            settle(states, PairGrowth.overLine(home, best, idle));
        }
    }

    private static PairGrowth over(PiecesHome home, Face cross) {
        return PairGrowth.overCross(home, cross, PairGrowth.cornersOf(cross));
    }

    /** Lays out the stretches by when cross (or line) and pairs were reached. */
    private void settle(List<CubeState> states, PairGrowth found) {
        this.growth = found;
        this.reached[0] = found.base();
        for (int pair = 1; pair <= PAIRS; pair++) {
            reached[pair] = found.times().get(pair - 1);
        }
        this.oriented = oriented(states);
        fillPhases();
    }

    private int oriented(List<CubeState> states) {
        int first = crossFace.opposite().ordinal() * 9;
        for (int turn = reached[PAIRS]; turn < states.size(); turn++) {
            String seen = states.get(turn).facelets().substring(first, first + 9);
            if (seen.chars().allMatch(letter -> letter == seen.charAt(4))) {
                return turn;
            }
        }
        return states.size();
    }

    private void fillPhases() {
        for (int turn = 0; turn < turns.size(); turn++) {
            int stretch = 0;
            while (stretch <= PAIRS && reached[stretch] <= turn) {
                stretch++;
            }
            if (stretch > PAIRS && oriented <= turn) {
                stretch++;
            }
            stretches[turn] = stretch;
            phases[turn] = stretch == 0
                    ? Phase.CROSS
                    : stretch <= PAIRS ? Phase.PAIRS : stretch == PAIRS + 1 ? Phase.ORIENT : Phase.PERMUTE;
        }
        for (int turn = 0; turn < turns.size(); turn++) {
            places[turn] = begins(turn)
                    ? Place.FIRST
                    : begins(turn - 1)
                            ? Place.SECOND
                            : turn + 1 == turns.size() || begins(turn + 1) ? Place.LAST : Place.AMID;
        }
    }

    private boolean begins(int turn) {
        return turn == 0 || stretches[turn] != stretches[turn - 1];
    }

    /** The axis about which all edges are oriented before nearly all turns of the pairs, or null. */
    private Axis orientedAxis(List<CubeState> states) {
        List<CubeState> pairs =
                states.subList(Math.min(reached[0], states.size()), Math.min(reached[PAIRS], states.size()));
        Axis oriented = null;
        long most = 0;
        for (Axis axis : Axis.values()) {
            long many = pairs.stream()
                    .filter(state -> axis != crossFace.axis() && OrientedEdges.all(state, axis))
                    .count();
            if (many > most && many > NEARLY_ALL * pairs.size()) {
                oriented = axis;
                most = many;
            }
        }
        return oriented;
    }

    public Phase phase(int turn) {
        return phases[turn];
    }

    public Place place(int turn) {
        return places[turn];
    }

    /** The corner of the pair being made, or null outside the pairs. */
    public Corner slot(int turn) {
        return phases[turn] == Phase.PAIRS ? growth.atWork(stretches[turn]).orElse(null) : null;
    }

    /** Whether the pairs were made with edges already oriented. */
    public boolean edgesFirst() {
        return idle != null;
    }

    /** The axis that rests in the pairs when edges come first, or null. */
    public Axis idle() {
        return idle;
    }
}
