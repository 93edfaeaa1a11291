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

    /**
     * Notes a stretch of time in which {@link #append} failed, now that it works again.
     *
     * @throws JournalException when that could not be noted
     */
    default void mended(JournalOutage outage) {}

    /**
     * Nothing has come for a while: a good moment to put in order what was appended, off any way that somebody waits
     * on.
     *
     * @throws JournalException when that failed; nothing is lost then
     */
    default void rested() {}
}
