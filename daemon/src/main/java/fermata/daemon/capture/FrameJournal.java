package fermata.daemon.capture;

import java.util.List;

/**
 * The durable, append-only record of one capture. The store implements it; called by the writer thread alone.
 */
@FunctionalInterface
public interface FrameJournal {
    /**
     * Appends the items in their order, all or none. When it returns they survive a power cut: that is what
     * <em>acknowledged</em> means. An item whose {@code (connection, ordinal)} is there already is skipped, because a
     * failed call is repeated with the same items.
     *
     * @throws JournalException when nothing was appended, classified by what can be done about it
     */
    void append(List<CapturedItem> items);
}
