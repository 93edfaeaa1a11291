package fermata.daemon.capture;

/**
 * A hole of our own making: frames arrived while the queue to the journal was full. It stands in the journal where
 * they would.
 *
 * @param connection serial number of the connection of the first dropped frame
 * @param ordinal its ordinal; the {@code frames} dropped ones would have had this ordinal and those that follow
 * @param atNanos arrival of the first dropped frame
 * @param frames how many were dropped, at least 1
 */
public record DroppedFrames(long connection, long ordinal, long atNanos, long frames) implements CapturedItem {
    public DroppedFrames {
        CapturedItem.checkPlace(connection, ordinal);
        if (frames < 1) {
            throw new IllegalArgumentException("frames " + frames + " of a drop is below 1");
        }
    }

    @Override
    public <E extends Exception> void visit(Visitor<E> visitor) throws E {
        visitor.dropped(this);
    }
}
