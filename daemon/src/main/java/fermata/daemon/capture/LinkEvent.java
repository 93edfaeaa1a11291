package fermata.daemon.capture;

import java.util.Objects;

/**
 * A change of the link to the cube.
 *
 * @param connection serial number of the connection; 0 before the first one came up
 * @param ordinal place among everything that happened on that connection
 * @param atNanos when this process learned of it, on the capture's monotonic clock
 * @param change what changed
 */
public record LinkEvent(long connection, long ordinal, long atNanos, LinkChange change) implements CapturedItem {
    public LinkEvent {
        CapturedItem.checkPlace(connection, ordinal);
        Objects.requireNonNull(change, "change");
    }

    @Override
    public <E extends Exception> void visit(Visitor<E> visitor) throws E {
        visitor.link(this);
    }
}
