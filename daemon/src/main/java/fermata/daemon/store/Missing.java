package fermata.daemon.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

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

    /** Those that are among another's too. */
    Optional<Missing> sharedWith(Missing other) {
        long from = Math.max(first, other.first);
        long to = Math.min(last, other.last);
        return kind == other.kind && from <= to ? Optional.of(new Missing(kind, from, to)) : Optional.empty();
    }

    /** Those that are in none of the others. */
    List<Missing> without(List<Missing> others) {
        List<Missing> parts = List.of(this);
        for (Missing other : others) {
            parts = parts.stream().flatMap(part -> part.without(other).stream()).toList();
        }
        return parts;
    }

    private List<Missing> without(Missing other) {
        if (sharedWith(other).isEmpty()) {
            return List.of(this);
        }
        List<Missing> parts = new ArrayList<>();
        if (first < other.first) {
            parts.add(new Missing(kind, first, other.first - 1));
        }
        if (other.last < last) {
            parts.add(new Missing(kind, other.last + 1, last));
        }
        return parts;
    }

    /** Whether all of another are among these. */
    boolean covers(Missing other) {
        return kind == other.kind && first <= other.first && other.last <= last;
    }
}
