package fermata.decoder.stream;

import java.util.Objects;

/**
 * When a turn was made, on the board's monotonic clock.
 *
 * @param boardMicros microseconds
 * @param earlierMicros how much before that it may have been; 0 if only by what the clock's line leaves open,
 *     {@link Long#MAX_VALUE} if no bound is known
 * @param basis what the time rests on
 */
public record TurnTime(long boardMicros, long earlierMicros, Basis basis) {
    /** What a time rests on. */
    public enum Basis {
        /** The device's clock, put on the board's by a fitted line. */
        DEVICE,
        /** The moment the frame arrived. */
        ARRIVAL
    }

    public TurnTime {
        Objects.requireNonNull(basis, "basis");
    }
}
