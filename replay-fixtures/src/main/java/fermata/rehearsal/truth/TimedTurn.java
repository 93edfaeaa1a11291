package fermata.rehearsal.truth;

import fermata.decoder.cube.Turn;
import java.util.Objects;

/**
 * A turn the centres felt, and when.
 *
 * @param atMicros microseconds since the evening began, never falling
 * @param turn in the core frame
 */
public record TimedTurn(long atMicros, Turn turn) {
    public TimedTurn {
        Objects.requireNonNull(turn, "turn");
        if (atMicros < 0) {
            throw new IllegalArgumentException("atMicros " + atMicros + " lies before the evening began");
        }
    }
}
