package fermata.analysis.method;

import fermata.analysis.goal.HeldState;
import fermata.analysis.goal.PieceSet;
import fermata.analysis.goal.Pieces;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Edge;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The beginning of a solve that orients all edges first and then builds without quarter turns of F and B.
 *
 * @param chain the solve with the first layer at D and F, B the faces whose quarter turns flip edges
 * @param oriented all edges are oriented, and are again at every later boundary of the first two layers
 * @param line both line edges are home as well
 * @param block a 1x2x3 block beside the line is home as well
 * @param leftFirst whether that block is the one at L
 */
record OrientedChain(LayerChain chain, int oriented, int line, int block, boolean leftFirst) {
    /** A corner and the three edges beside it. */
    private static final List<PieceSet> SMALL_BLOCKS =
            Stream.of(Corner.values()).map(OrientedChain::smallBlock).toList();

    /** Empty if the edges were not oriented before anything that is built on them. */
    static Optional<OrientedChain> of(LayerChain chain) {
        HeldStates held = chain.held();
        int all = chain.firstTwoLayers();
        if (!held.holdsAt(all, Pieces::edgesOriented)) {
            return Optional.empty();
        }
        Predicate<HeldState> lined = s -> s.has(Pieces.LINE) && Pieces.edgesOriented(s);
        int left = held.first(0, all, s -> s.has(Pieces.LEFT_BLOCK) && lined.test(s));
        int right = held.first(0, all, s -> s.has(Pieces.RIGHT_BLOCK) && lined.test(s));
        int block = Math.min(left, right);
        int line = held.first(0, block, lined);
        int oriented = held.first(0, line, Pieces::edgesOriented);
        OrientedChain found = new OrientedChain(chain, oriented, line, block, left <= right);
        boolean cameFirst = oriented <= chain.cross() && !builtBefore(held, oriented);
        boolean stayed = found.isByBlocks()
                || chain.isByPairs()
                        && !chain.isByOrientedBlocks()
                        && chain.pairs().stream().allMatch(t -> held.holdsAt(t, Pieces::edgesOriented));
        return cameFirst && stayed && oriented < all ? Optional.of(found) : Optional.empty();
    }

    /** Whether it went on by line and blocks rather than by a cross. */
    boolean isByBlocks() {
        return block <= chain.aligned();
    }

    /** Whether a 2x2x2 block or all corners stood before: then the edges were oriented around them, not first. */
    private static boolean builtBefore(HeldStates held, int oriented) {
        return held.first(0, oriented, CornersAlone::inPlace) < oriented
                || held.first(0, oriented, OrientedChain::hasSmallBlock) < oriented
                        && held.holdsAt(oriented, OrientedChain::hasSmallBlock);
    }

    private static boolean hasSmallBlock(HeldState state) {
        return SMALL_BLOCKS.stream().anyMatch(state::has);
    }

    private static PieceSet smallBlock(Corner corner) {
        return PieceSet.of(
                List.of(corner),
                Stream.of(Edge.values())
                        .filter(edge -> corner.faces().containsAll(edge.faces()))
                        .toList());
    }
}
