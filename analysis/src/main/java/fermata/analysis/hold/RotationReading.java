package fermata.analysis.hold;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;

/** How a change of hold between two turns can be read. The first that fits counts. */
enum RotationReading {
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

    /** 0 for what is a turn, 1 for what may stand elsewhere, 2 for the rest. */
    final int broad;

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
    static RotationReading of(Orientation rotation, Turn earlier, Turn last, Turn next) {
        if (rotation == alongside(last)) {
            boolean slice = earlier != null
                    && earlier.face() == last.face().opposite()
                    && earlier.quarters() == 4 - last.quarters();
            return slice ? SLICE : WIDE;
        }
        if (keeps(rotation, last.face())) {
            return OWN;
        }
        if (rotation == alongside(next)) {
            return WIDE_NEXT;
        }
        return keeps(rotation, next.face()) ? OWN_NEXT : FREE;
    }

    /** The rotation that makes a layer's turn the wide turn of the opposite layer. */
    static Orientation alongside(Turn turn) {
        return Orientation.turning(turn.face().opposite(), turn.quarters());
    }

    private static boolean keeps(Orientation rotation, Face face) {
        return rotation.handAt(face) == face;
    }
}
