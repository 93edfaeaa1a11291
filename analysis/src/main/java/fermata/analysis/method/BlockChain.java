package fermata.analysis.method;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.function.Predicate;

/**
 * The boundaries of a solve read as two 1x2x3 blocks at L and R, the other four corners, and the last six edges.
 *
 * <p>Slice turns move the centres, which the core frame holds still, so that blocks seem to turn with their faces: a
 * block counts as built if a turn of its face would bring it home, both if opposite turns of both faces would.
 *
 * @param held the solve with the blocks at L and R and their shared bottom at D
 * @param block1 the first block stands
 * @param leftFirst whether that is the one at L
 * @param block2 both stand, level with each other
 * @param corners all corners are in place as well, up to a turn of U
 * @param cornersFirst whether all corners were in place before the first block stood: then it is another method
 */
record BlockChain(HeldStates held, int block1, boolean leftFirst, int block2, int corners, boolean cornersFirst) {
    private static final List<Edge> LEFT_EDGES = List.of(Edge.DL, Edge.FL, Edge.BL);
    private static final List<Edge> RIGHT_EDGES = List.of(Edge.DR, Edge.FR, Edge.BR);
    private static final List<Corner> LEFT_CORNERS = List.of(Corner.DLF, Corner.DBL);
    private static final List<Corner> RIGHT_CORNERS = List.of(Corner.DFR, Corner.DRB);

    static BlockChain of(HeldStates held) {
        int corners = held.first(0, held.end(), s -> levelled(s, Pieces::topCornersInOrder));
        int block2 = held.first(0, corners, s -> levelled(s, state -> true));
        int left = held.first(0, block2, s -> Pieces.upToTurn(s, Face.L, BlockChain::left));
        int right = held.first(0, block2, s -> Pieces.upToTurn(s, Face.R, BlockChain::right));
        int block1 = Math.min(left, right);
        boolean cornersFirst = held.first(0, block1, CornersAlone::inPlace) < block1;
        return new BlockChain(held, block1, left <= right, block2, corners, cornersFirst);
    }

    int sumOfTimes() {
        return block1 + block2 + corners;
    }

    /** Whether both blocks stand and, with the centres turned back under them, the rest holds too. */
    private static boolean levelled(CubeState state, Predicate<CubeState> rest) {
        return withCentresBack(state, back -> left(back) && right(back) && rest.test(back));
    }

    private static boolean withCentresBack(CubeState state, Predicate<CubeState> property) {
        if (property.test(state)) {
            return true;
        }
        for (int quarters = 1; quarters < 4; quarters++) {
            if (property.test(state.apply(Turn.of(Face.L, quarters)).apply(Turn.of(Face.R, -quarters)))) {
                return true;
            }
        }
        return false;
    }

    private static boolean left(CubeState state) {
        return Pieces.edges(state, LEFT_EDGES) && LEFT_CORNERS.stream().allMatch(state::isSolved);
    }

    private static boolean right(CubeState state) {
        return Pieces.edges(state, RIGHT_EDGES) && RIGHT_CORNERS.stream().allMatch(state::isSolved);
    }
}
