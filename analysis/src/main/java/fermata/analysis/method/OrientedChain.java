package fermata.analysis.method;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

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
    private static final List<Edge> LEFT_EDGES = List.of(Edge.DL, Edge.FL, Edge.BL);
    private static final List<Edge> RIGHT_EDGES = List.of(Edge.DR, Edge.FR, Edge.BR);
    private static final List<Corner> LEFT_CORNERS = List.of(Corner.DLF, Corner.DBL);
    private static final List<Corner> RIGHT_CORNERS = List.of(Corner.DFR, Corner.DRB);

    /** Empty if the edges were not oriented before anything that is built on them. */
    static Optional<OrientedChain> of(LayerChain chain) {
        HeldStates held = chain.held();
        int all = chain.firstTwoLayers();
        if (!held.holdsAt(all, Pieces::edgesOriented)) {
            return Optional.empty();
        }
        Predicate<CubeState> lined = s -> Pieces.edgesOriented(s) && Pieces.edges(s, Pieces.LINE);
        int left = held.first(0, all, s -> lined.test(s) && block(s, LEFT_EDGES, LEFT_CORNERS));
        int right = held.first(0, all, s -> lined.test(s) && block(s, RIGHT_EDGES, RIGHT_CORNERS));
        int block = Math.min(left, right);
        int line = held.first(0, block, lined);
        int oriented = held.first(0, line, Pieces::edgesOriented);
        OrientedChain found = new OrientedChain(chain, oriented, line, block, left <= right);
        boolean cameFirst = oriented <= chain.cross() && !builtBefore(held, oriented);
        boolean stayed = found.isByBlocks()
                || chain.isByPairs() && chain.pairs().stream().allMatch(t -> held.holdsAt(t, Pieces::edgesOriented));
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

    private static boolean hasSmallBlock(CubeState state) {
        for (Corner corner : Corner.values()) {
            if (state.isSolved(corner)
                    && List.of(Edge.values()).stream()
                            .filter(edge -> corner.faces().containsAll(edge.faces()))
                            .allMatch(state::isSolved)) {
                return true;
            }
        }
        return false;
    }

    private static boolean block(CubeState state, List<Edge> edges, List<Corner> corners) {
        return Pieces.edges(state, edges) && corners.stream().allMatch(state::isSolved);
    }
}
