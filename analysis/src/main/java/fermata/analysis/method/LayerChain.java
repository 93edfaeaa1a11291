package fermata.analysis.method;

import fermata.analysis.goal.PairGrowth;
import fermata.analysis.goal.Pieces;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Face;
import fermata.decoder.search.Slot;
import java.util.List;

/**
 * The stage boundaries of a solve read as cross, four pairs and last layer, for one face of the cross. A boundary is a
 * time of {@link HeldStates}.
 *
 * <p>Each stage ends at the first turn after which it holds at every later boundary. Since each stage contains the one
 * before it, this is found from the end: the last layer permuted, oriented, then the pairs by {@link PairGrowth}, down
 * to the cross.
 *
 * <p>Cost: a few looks at every time, and that of the pairs.
 *
 * @param held the solve with the cross at D
 * @param cross its edges are right among themselves
 * @param aligned they are right against the centres as well
 * @param pairs when 1, 2, 3 and 4 pairs are solved with the cross
 * @param slots the pairs in that order
 * @param oriented the last layer shows one colour
 * @param permuted the cube lacks at most a turn of the last layer
 */
record LayerChain(
        HeldStates held, int cross, int aligned, List<Integer> pairs, List<Slot> slots, int oriented, int permuted) {
    LayerChain {
        pairs = List.copyOf(pairs);
        slots = List.copyOf(slots);
    }

    static LayerChain of(HeldStates held) {
        int permuted = held.first(0, held.end(), Pieces::solvedUpToTop);
        int oriented = held.first(0, permuted, Pieces::topOriented);
        List<Corner> around = held.corners();
        PairGrowth growth = PairGrowth.overCross(held.home(), held.hold().coreAt(Face.D), around);
        List<Slot> slots = growth.slots().stream()
                .map(corner -> Slot.values()[around.indexOf(corner)])
                .toList();
        int cross = held.first(0, growth.base(), Pieces::crossUpToTurn);
        return new LayerChain(held, cross, growth.base(), growth.times(), slots, oriented, permuted);
    }

    /** When all first-layer and middle pieces are home. */
    int firstTwoLayers() {
        return pairs.get(3);
    }

    /** Whether it grew by a cross and pairs: some may have come together, or with the cross, but not all. */
    boolean isByPairs() {
        return pairs.get(0) < pairs.get(3);
    }

    /**
     * Whether three pairs came with the cross and all edges were oriented by then: blocks were built round oriented
     * edges, and a cross came of it. One in eight crosses with three pairs, as five edges are left, looks so by chance.
     */
    boolean isByOrientedBlocks() {
        return aligned == pairs.get(2) && held.holdsAt(aligned, Pieces::edgesOriented);
    }

    /** How soon the first two layers grow; the face for which it is least is the one that was built on. */
    int sumOfTimes() {
        return aligned + pairs.stream().mapToInt(Integer::intValue).sum();
    }
}
