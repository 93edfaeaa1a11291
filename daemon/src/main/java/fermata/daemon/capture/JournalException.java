package fermata.daemon.capture;

import java.util.Objects;

/** The journal could not take the items; none of them is acknowledged. */
public final class JournalException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** What is wrong, and so whether waiting can help. */
    public enum Fault {
        /** No space left: waiting can help, somebody may free some. */
        DISK_FULL(true),
        /** The disk, or the quota on it, refuses: waiting can help, it may be mended or plugged in again. */
        FAILING_DISK(true),
        /** Somebody else holds the journal: waiting can help. */
        BUSY(true),
        /** The file or file system may not be written: waiting does not help. */
        READ_ONLY(false),
        /** The journal is damaged or failed in an unknown way: waiting does not help. */
        BROKEN(false);

        private final boolean passing;

        Fault(boolean passing) {
            this.passing = passing;
        }

        /** Whether trying the same again later can succeed without a restart. */
        public boolean isPassing() {
            return passing;
        }
    }

    private final Fault fault;

    /**
     * @param fault the class of the failure
     * @param message what failed, where (the file) and what to do
     * @param cause the failure underneath
     */
    public JournalException(Fault fault, String message, Throwable cause) {
        super(message, cause);
        this.fault = Objects.requireNonNull(fault, "fault");
    }

    /** The class of the failure. */
    public Fault fault() {
        return fault;
    }
}
