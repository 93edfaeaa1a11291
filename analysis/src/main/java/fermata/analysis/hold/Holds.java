package fermata.analysis.hold;

import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;

/** The 24 holds by number, as tables for the inner loops. */
public final class Holds {
    public static final int COUNT = 24;

    /** By hold and core turn: the number of the turn the solver sees. */
    public static final int[][] TURN_SEEN = new int[COUNT][18];

    /** By two holds: the number of the rotation between them. */
    public static final int[][] ROTATION = new int[COUNT][COUNT];

    static {
        for (Orientation hold : Orientation.all()) {
            for (Turn turn : Turn.all()) {
                TURN_SEEN[hold.index()][turn.index()] = hold.toHand(turn).index();
            }
            for (Orientation other : Orientation.all()) {
                ROTATION[hold.index()][other.index()] = hold.to(other).index();
            }
        }
    }

    private Holds() {}

    /** The number of the face of a turn's number. */
    public static int faceOf(int turn) {
        return turn / 3;
    }
}
