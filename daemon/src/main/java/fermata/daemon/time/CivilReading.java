package fermata.daemon.time;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;

/**
 * Civil time at one moment of a monotonic clock.
 *
 * @param wall what the machine takes the date to be
 * @param atNanos the capture's monotonic clock at the same moment
 * @param asleepNanos how long the machine has slept since some moment of this boot: monotonic time stood still then,
 *     civil time did not. Good for differences only
 * @param proof why the date is believed
 */
public record CivilReading(Instant wall, long atNanos, long asleepNanos, ClockProof proof) {
    public CivilReading {
        Objects.requireNonNull(wall, "wall");
        Objects.requireNonNull(proof, "proof");
    }

    /** Whether the date is known to be right. */
    public boolean isKnown() {
        return proof != ClockProof.NONE;
    }

    /**
     * Civil time at an earlier moment of the same boot, by this reading.
     *
     * @param nanos the monotonic clock then
     * @param slept how long the machine had slept then, as {@link #asleepNanos()} counts
     */
    public Instant at(long nanos, long slept) {
        return wall.minusNanos(atNanos - nanos).minusNanos(asleepNanos - slept);
    }

    /** By how much the clock was set between another reading and this one; zero while it only ran. */
    public Duration setSince(CivilReading other) {
        return Duration.between(at(other.atNanos, other.asleepNanos), other.wall)
                .abs();
    }
}
