package fermata.rehearsal.planning;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.character.Handling;
import fermata.rehearsal.character.LeftSide;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * What the holding hand does, with the price of each move in half-turns of R (2 is the cheapest turn), and what it
 * does in each of the 24 holds. The prices only steer the search; times come from the style. No source: common
 * practice says R and U are cheap with the left hand, F and D middling, L and B dear.
 */
final class HandMoves {
    private static final String TURNS = "U 2 U2 3 U' 2 R 2 R2 4 R' 2 ";

    private static final int NO_TURN = -1;

    final int count;
    private final List<Move> moves;
    private final int[] prices;
    private final int[] axes;
    private final int[][] core;
    private final int[][] next;

    private HandMoves(String priced) {
        String[] words = priced.split(" ");
        this.moves = Sequence.parse(IntStream.iterate(0, at -> at < words.length, at -> at + 2)
                        .mapToObj(at -> words[at])
                        .collect(Collectors.joining(" ")))
                .moves();
        this.count = moves.size();
        this.prices = IntStream.range(0, count)
                .map(at -> Integer.parseInt(words[2 * at + 1]))
                .toArray();
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

    /** For pairs: one hold, the cube turned about the upright axis at most; never the far side. */
    static HandMoves forPairs(Handling handling) {
        String held = handling.left() == LeftSide.FACED ? "" : "L 2 L2 5 L' 2 ";
        String round = switch (handling.left()) {
            case TILTED -> "y 6 y' 6 y2 9";
            case FACED -> "y 5 y' 5 y2 8";
            case IN_PLACE -> "y 4 y' 4 y2 7";
        };
        return new HandMoves(TURNS + "F 6 F' 6 D 7 D' 7 " + held + round);
    }

    /** For the cross, which is planned before it starts: all sides stay possible, at a price. */
    static HandMoves forCross(Handling handling) {
        String held = handling.left() == LeftSide.IN_PLACE ? "L 4 L2 6 L' 4 " : "L 9 L2 12 L' 9 ";
        String wide = handling.widensCross() ? "r 3 r' 3 " : "";
        return new HandMoves(TURNS
                + "F 3 F2 5 F' 3 D 3 D2 5 D' 3 B 9 B2 12 B' 9 "
                + held
                + wide
                + "x 5 x' 5 x2 9 y 6 y' 6 y2 9 z 4 z' 4 z2 9");
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

    boolean isLetter(int index, Face face) {
        return moves.get(index).letter().equals(face.name());
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
