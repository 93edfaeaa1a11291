package fermata.daemon.time;

import java.time.Duration;
import java.util.concurrent.TimeUnit;

/**
 * A clock that is never stepped: nanoseconds from an arbitrary origin, only good for differences.
 *
 * <p>Safe for use by many threads. A scaled clock runs faster than the world by a fixed factor; whoever waits by it
 * (back-off, time-outs, keep-alive, the virtual cube's script) is scaled with it and needs no factor of its own.
 */
public interface MonotonicClock {
    /** Nanoseconds on this clock. */
    long nanos();

    /** How many nanoseconds of the machine's own time pass while {@code duration} passes on this clock. */
    long machineNanos(Duration duration);

    /** Waits until {@code duration} has passed on this clock; returns at once when it is zero or negative. */
    default void sleep(Duration duration) throws InterruptedException {
        TimeUnit.NANOSECONDS.sleep(machineNanos(duration));
    }

    /** The machine's own monotonic clock, at real speed. */
    static MonotonicClock system() {
        return new ScaledClock(1.0);
    }

    /**
     * A clock that starts at the machine's present reading and runs {@code speed} times as fast as the machine's.
     *
     * @param speed times real time, above 0; 1 is {@link #system()}
     */
    static MonotonicClock scaled(double speed) {
        return new ScaledClock(speed);
    }
}
