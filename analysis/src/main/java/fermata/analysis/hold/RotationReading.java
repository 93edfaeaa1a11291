package fermata.analysis.hold;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;

/** How a change of hold between two turns can be read. The first that fits counts. */
public enum RotationReading {
    /** With the turn before it, one wide turn. */
    WIDE(0),
    /** With the two turns before it, one slice. */
    SLICE(0),
    /** About the axis of the turn before it. */
    OWN(1),
    /** With the turn after it, one wide turn. */
    WIDE_NEXT(1),
    /** About the axis of the turn after it. */
    OWN_NEXT(1),
    /** A rotation for its own sake. */
    FREE(2);

    private static final int TURNS = 18;

    /** 0 for what is a turn, 1 for what may stand elsewhere, 2 for the rest. */
    public final int broad;

    RotationReading(int broad) {
        this.broad = broad;
    }

    /**
     * Reads a rotation.
     *
     * @param earlier the turn before the last in the hold before the rotation, or null
     * @param last the turn before the rotation, in the hold before it
     * @param next the turn after it, in the hold after it
     */
    public static RotationReading of(Orientation rotation, Turn earlier, Turn last, Turn next) {
        return of(rotation, earlier != null && isSlice(earlier, last), last, next);
    }

    private static RotationReading of(Orientation rotation, boolean isSlice, Turn last, Turn next) {
        if (rotation == alongside(last)) {
            return isSlice ? SLICE : WIDE;
        }
        if (keeps(rotation, last.face())) {
            return OWN;
        }
        if (rotation == alongside(next)) {
            return WIDE_NEXT;
        }
        return keeps(rotation, next.face()) ? OWN_NEXT : FREE;
    }

    /** The same by numbers, from a table: the lattice asks 552 times a turn. */
    public static RotationReading of(int rotation, boolean isSlice, int last, int next) {
        return Known.READINGS[((rotation * TURNS + last) * TURNS + next) * 2 + (isSlice ? 1 : 0)];
    }

    /** Whether two turns may be the two halves of a slice, in whichever hold. */
    public static boolean isSlice(Turn earlier, Turn last) {
        return earlier.face() == last.face().opposite() && earlier.quarters() == 4 - last.quarters();
    }

    /** The rotation that makes a layer's turn the wide turn of the opposite layer. */
    public static Orientation alongside(Turn turn) {
        return Orientation.turning(turn.face().opposite(), turn.quarters());
    }

    private static boolean keeps(Orientation rotation, Face face) {
        return rotation.handAt(face) == face;
    }

    /** Every reading, worked out when the first is asked for. */
    private static final class Known {
        private static final RotationReading[] READINGS = new RotationReading[Holds.COUNT * TURNS * TURNS * 2];

        static {
            int at = 0;
            for (Orientation rotation : Orientation.all()) {
                for (Turn last : Turn.all()) {
                    for (Turn next : Turn.all()) {
                        READINGS[at++] = of(rotation, false, last, next);
                        READINGS[at++] = of(rotation, true, last, next);
                    }
                }
            }
        }
    }
}
