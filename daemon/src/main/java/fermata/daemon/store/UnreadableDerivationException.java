package fermata.daemon.store;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;

/** Something derived is not as it was kept: it is to be thrown away and derived again, and nobody need know. */
public final class UnreadableDerivationException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Optional<LocalDate> day;

    /**
     * @param day the practice day whose results are to go; empty for all
     * @param message what cannot be read, for the log
     * @param cause what it came from, or null
     */
    public UnreadableDerivationException(Optional<LocalDate> day, String message, Throwable cause) {
        super(message, cause);
        this.day = Objects.requireNonNull(day, "day");
    }

    /** The practice day whose results are to go; empty for all. */
    public Optional<LocalDate> day() {
        return day;
    }
}
