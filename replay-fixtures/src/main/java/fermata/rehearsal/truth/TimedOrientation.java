package fermata.rehearsal.truth;

import fermata.decoder.orientation.Quaternion;
import java.util.Objects;

/**
 * What a motion sensor in the core told.
 *
 * @param atMicros microseconds since the evening began, never falling
 * @param attitude takes the core's axes (x out of R, y out of U, z out of F) to a world whose y axis points up
 */
public record TimedOrientation(long atMicros, Quaternion attitude) {
    public TimedOrientation {
        Objects.requireNonNull(attitude, "attitude");
    }
}
