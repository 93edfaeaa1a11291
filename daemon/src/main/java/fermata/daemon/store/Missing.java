package fermata.daemon.store;

import java.util.Objects;

/**
 * Rows that were acknowledged and are not there, or were altered by the disk.
 *
 * @param kind frames that were heard, or events that were told
 * @param first number of the first one
 * @param last number of the last one
 */
public record Missing(Kind kind, long first, long last) {
    /** What is missing. */
    public enum Kind {
        /** What the radio said. */
        FRAME,
        /** What a file or a person told. */
        EVENT
    }

    public Missing {
        Objects.requireNonNull(kind, "kind");
        if (first < 1 || last < first) {
            throw new IllegalArgumentException("missing " + first + " to " + last + " is no range of numbers");
        }
    }

    /** How many. */
    public long count() {
        return last - first + 1;
    }

    /** Whether all of another are among these. */
    boolean covers(Missing other) {
        return kind == other.kind && first <= other.first && other.last <= last;
    }
}
