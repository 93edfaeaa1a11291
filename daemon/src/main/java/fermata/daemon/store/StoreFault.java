package fermata.daemon.store;

import fermata.daemon.capture.JournalException;

/** What is wrong with the store, and so what can be done. */
public enum StoreFault {
    /** No space is left where the home is. */
    DISK_FULL(JournalException.Fault.DISK_FULL),
    /** The disk answers with errors: it may be mended, or plugged in again. */
    DISK_FAILING(JournalException.Fault.DISK_FAILING),
    /** Another process holds what is needed. */
    BUSY(JournalException.Fault.BUSY),
    /** The file or file system may not be written, or not be opened at all. */
    READ_ONLY(JournalException.Fault.READ_ONLY),
    /** The database is damaged. */
    DAMAGED(JournalException.Fault.BROKEN),
    /** The database or the SQLite library is of a version that this program cannot use. */
    WRONG_VERSION(JournalException.Fault.BROKEN),
    /** The database is an older program's and must be brought up to date before it is read. */
    OUTDATED(JournalException.Fault.BROKEN),
    /** Anything else that SQLite or the file system refused. */
    BROKEN(JournalException.Fault.BROKEN);

    /** Whether the practice is as it was and only cannot be written now, so that answers can do without. */
    public boolean isOnlyOfWriting() {
        return this == DISK_FULL || this == DISK_FAILING || this == BUSY || this == READ_ONLY;
    }

    private final JournalException.Fault forJournal;

    StoreFault(JournalException.Fault forJournal) {
        this.forJournal = forJournal;
    }

    /** The same fault as a capture's writer sees it. */
    JournalException.Fault forJournal() {
        return forJournal;
    }
}
