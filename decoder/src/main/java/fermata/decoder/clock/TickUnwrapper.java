package fermata.decoder.clock;

import java.util.OptionalLong;

/**
 * Makes a counter that wraps into one that does not, by the board's own elapsed time: a pause longer than a wrap is
 * counted right. O(1). Not thread-safe.
 */
public final class TickUnwrapper {
    /**
     * How far a device's elapsed time may be from the board's: a frame can be held up by radio trouble until the link
     * is given up, which takes at most 32 s (Bluetooth Core Specification, Vol 4, Part E, 7.8.12: supervision timeout).
     */
    static final long MAX_LATE_MICROS = 32_000_000;

    /** Crystals of cheap devices stay well within; same bound as for a fitted skew. */
    private static final double MAX_SKEW = 200e-6;

    private final long wrapTicks;
    private final double tickMicros;
    private boolean started;
    private long lastTicks;
    private long lastArrivalMicros;

    /**
     * For one counter.
     *
     * @param widthBits after which it wraps, 1..48
     * @param tickMicros microseconds a tick
     */
    public TickUnwrapper(int widthBits, double tickMicros) {
        if (widthBits < 1 || widthBits > 48 || !(tickMicros > 0)) {
            throw new IllegalArgumentException(
                    "a clock of " + widthBits + " bits and " + tickMicros + " us a tick is not 1..48 bits, above 0 us");
        }
        this.wrapTicks = 1L << widthBits;
        this.tickMicros = tickMicros;
    }

    /** Forgets the past: what comes next is taken as it stands. */
    public void restart() {
        started = false;
    }

    /** Whether there is a past to compare with. */
    public boolean hasStarted() {
        return started;
    }

    /** Microseconds of unwrapped ticks. */
    public long micros(long unwrappedTicks) {
        return Math.round(unwrappedTicks * tickMicros);
    }

    /** Unwrapped ticks last accepted; only of use once started. */
    public long lastTicks() {
        return lastTicks;
    }

    /** Unwrapped ticks of a moment at or before the last accepted one, by its wrapped ticks. */
    public long before(long unwrappedTicks, long ticks) {
        return unwrappedTicks - Math.floorMod(unwrappedTicks - ticks, wrapTicks);
    }

    /**
     * Unwrapped ticks, if the counter can have gone there by then: not back, and not away from the board's time by more
     * than a late frame explains. Changes nothing.
     */
    public OptionalLong peek(long ticks, long arrivalMicros) {
        if (!started) {
            return OptionalLong.of(ticks);
        }
        OptionalLong near = nearest(ticks, arrivalMicros);
        return near.isPresent() && near.getAsLong() >= lastTicks ? near : OptionalLong.empty();
    }

    /** Unwrapped ticks of about that time, be it before or after the last accepted moment; empty if far from it. */
    public OptionalLong near(long ticks, long arrivalMicros) {
        return started ? nearest(ticks, arrivalMicros) : OptionalLong.empty();
    }

    /** Whether the counter can stand there at about that time, be it before or after the last accepted moment. */
    public boolean isNear(long ticks, long arrivalMicros) {
        return !started || nearest(ticks, arrivalMicros).isPresent();
    }

    private OptionalLong nearest(long ticks, long arrivalMicros) {
        double elapsed = (arrivalMicros - lastArrivalMicros) / tickMicros;
        long step = Math.floorMod(ticks - lastTicks, wrapTicks);
        long rounds = Math.round((elapsed - step) / wrapTicks);
        long forward = step + rounds * wrapTicks;
        double allowed = MAX_LATE_MICROS / tickMicros + Math.abs(elapsed) * MAX_SKEW;
        return Math.abs(forward - elapsed) <= allowed ? OptionalLong.of(lastTicks + forward) : OptionalLong.empty();
    }

    /** Takes unwrapped ticks as the last ones. */
    public void accept(long unwrappedTicks, long arrivalMicros) {
        started = true;
        lastTicks = unwrappedTicks;
        lastArrivalMicros = arrivalMicros;
    }
}
