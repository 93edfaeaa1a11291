package fermata.analysis.method;

import fermata.analysis.goal.HeldState;
import fermata.analysis.goal.Pieces;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
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
 */
record BlockChain(HeldStates held, int block1, boolean leftFirst, int block2, int corners) {
    static BlockChain of(HeldStates held) {
        int corners = held.first(0, held.end(), s -> levelled(s, Pieces::topCornersInOrder));
        int block2 = held.first(0, corners, s -> levelled(s, state -> true));
        int left = held.first(0, block2, s -> s.hasUpToTurn(Face.L, Pieces.LEFT_BLOCK));
        int right = held.first(0, block2, s -> s.hasUpToTurn(Face.R, Pieces.RIGHT_BLOCK));
        return new BlockChain(held, Math.min(left, right), left <= right, block2, corners);
    }

    int sumOfTimes() {
        return block1 + block2 + corners;
    }

    /** Whether all corners were in place before the first block stood: then it is another method. */
    boolean cornersFirst() {
        return held.first(0, block1, CornersAlone::inPlace) < block1;
    }

    /** Whether both blocks stand and, with the centres turned back under them, the rest holds too. */
    private static boolean levelled(HeldState state, Predicate<HeldState> rest) {
        for (int quarters = 0; quarters < 4; quarters++) {
            // Neither face has a piece of the other's block, so each may be asked of its own turn.
            if (state.hasAfter(Face.L, quarters, Pieces.LEFT_BLOCK)
                    && state.hasAfter(Face.R, (4 - quarters) % 4, Pieces.RIGHT_BLOCK)
                    && rest.test(withCentresBack(state, quarters))) {
                return true;
            }
        }
        return false;
    }

    private static HeldState withCentresBack(HeldState state, int quarters) {
        return quarters == 0
                ? state
                : HeldState.of(state.renamed().apply(Turn.of(Face.L, quarters)).apply(Turn.of(Face.R, -quarters)));
    }
}
