package fermata.daemon.time;

import java.time.Duration;

/**
 * The moment on a clock at which a wait ends. Immutable.
 *
 * @param clock what the wait runs by: {@link MonotonicClock#system()} where what is waited for knows of no other, as
 *     another process or the start of a thread
 * @param atNanos the moment in that clock's nanoseconds
 */
public record Deadline(MonotonicClock clock, long atNanos) {
    /** So long from now; at once when {@code limit} is zero or negative. */
    public static Deadline in(Duration limit, MonotonicClock clock) {
        return new Deadline(clock, clock.nanos() + Math.max(0, limit.toNanos()));
    }

    /** Nanoseconds left on its clock; 0 when it has passed. */
    public long leftNanos() {
        return Math.max(0, atNanos - clock.nanos());
    }

    /** Whether nothing is left. */
    public boolean hasPassed() {
        return leftNanos() == 0;
    }
}
