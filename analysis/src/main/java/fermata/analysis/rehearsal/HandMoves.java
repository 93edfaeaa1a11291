package fermata.analysis.rehearsal;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.List;

/**
 * What the holding hand can do, with the price of each move in half-turns of R (2 is the cheapest turn), and what it
 * does in each of the 24 holds. The prices only steer the search; times come from the style. No source: common
 * practice says R and U are cheap with the left hand, F and D middling, L and B dear.
 */
final class HandMoves {
    /** For pairs: nothing that turns the held side or the far side. */
    static final HandMoves FOR_PAIRS = new HandMoves(
            "U U2 U' R R2 R' F F' D D' D2 r r' u u' y y' y2", 2, 3, 2, 2, 3, 2, 4, 4, 3, 3, 5, 3, 3, 4, 4, 4, 4, 6);

    /** For the cross, which is planned before it starts: L and B stay possible, at a price. */
    static final HandMoves FOR_CROSS = new HandMoves(
            "U U2 U' R R2 R' F F2 F' D D2 D' L L2 L' B B2 B' u u2 u' r r2 r' f f2 f' d d2 d' l l2 l'"
                    + " x x2 x' y y2 y' z z2 z'",
            2,
            3,
            2,
            2,
            3,
            2,
            3,
            5,
            3,
            3,
            5,
            3,
            8,
            11,
            8,
            9,
            12,
            9,
            3,
            4,
            3,
            3,
            4,
            3,
            4,
            6,
            4,
            5,
            7,
            5,
            6,
            8,
            6,
            4,
            6,
            4,
            4,
            6,
            4,
            4,
            6,
            4);

    private static final int NO_TURN = -1;

    final int count;
    private final List<Move> moves;
    private final int[] prices;
    private final int[] axes;
    private final int[][] core;
    private final int[][] next;

    private HandMoves(String written, int... prices) {
        this.moves = Sequence.parse(written).moves();
        this.count = moves.size();
        if (prices.length != count) {
            throw new IllegalStateException(prices.length + " prices for " + count + " moves");
        }
        this.prices = prices;
        this.axes = moves.stream().mapToInt(HandMoves::axisOf).toArray();
        this.core = new int[24][count];
        this.next = new int[24][count];
        for (Orientation hold : Orientation.all()) {
            for (int move = 0; move < count; move++) {
                List<Turn> turns = moves.get(move).turns(hold);
                core[hold.index()][move] =
                        turns.isEmpty() ? NO_TURN : turns.get(0).index();
                next[hold.index()][move] = hold.then(moves.get(move).rotation()).index();
            }
        }
    }

    private static int axisOf(Move move) {
        if (move instanceof Move.Rotation) {
            return NO_TURN;
        }
        return Face.of(Character.toUpperCase(move.letter().charAt(0))).axis().ordinal();
    }

    Move move(int index) {
        return moves.get(index);
    }

    int price(int index) {
        return prices[index];
    }

    /**
     * The axis of the layer in the hand frame, by {@link fermata.decoder.cube.Axis}; not to be asked of a rotation.
     */
    int axis(int index) {
        return axes[index];
    }

    boolean isRotation(int index) {
        return axes[index] == NO_TURN;
    }

    /** The core-frame turn's index; not to be asked of a rotation. */
    int core(int hold, int index) {
        return core[hold][index];
    }

    int next(int hold, int index) {
        return next[hold][index];
    }
}
