package fermata.daemon.capture;

/**
 * One thing that happened during a capture, in the order it happened.
 *
 * <p>{@code (connection, ordinal)} is unique within a capture over all three kinds, so that a journal that is given an
 * item twice (a commit whose answer was lost) can keep it once.
 */
public sealed interface CapturedItem permits HeardFrame, LinkEvent, DroppedFrames {
    /**
     * What each kind is to one who must deal with all of them.
     *
     * @param <E> what can go wrong
     */
    interface Visitor<E extends Exception> {
        void frame(HeardFrame frame) throws E;

        void link(LinkEvent link) throws E;

        void dropped(DroppedFrames drop) throws E;
    }

    /** Goes to what the visitor does with the kind. */
    <E extends Exception> void visit(Visitor<E> visitor) throws E;

    /** Serial number of the connection within the capture, from 1; 0 before the first one came up. */
    long connection();

    /** Place within the connection, from 0. What happens between two connections counts on in the earlier one. */
    long ordinal();

    /** Nanoseconds of the capture's monotonic clock. */
    long atNanos();

    /** Checks the numbers that every item carries. */
    private static void check(String name, long value) {
        if (value < 0) {
            throw new IllegalArgumentException(name + " " + value + " is negative");
        }
    }

    /** Refuses a negative connection or ordinal. */
    static void checkPlace(long connection, long ordinal) {
        check("connection", connection);
        check("ordinal", ordinal);
    }
}
