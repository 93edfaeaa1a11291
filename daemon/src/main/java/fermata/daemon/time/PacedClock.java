package fermata.daemon.time;

import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;

/**
 * A clock that runs up to {@code speed} times as fast as the world, and stands still while the machine does not keep
 * up.
 *
 * <p>On a clock that only multiplies, ten milliseconds without a processor become a second of lateness at a hundred
 * times real time, and a second is more than any radio explains. Here time goes on in small steps and only while nobody
 * is behind, so that speed costs patience and not truth. After {@value #LONGEST_HOLD_MILLIS} ms it goes on all the
 * same: what is waited for may never come.
 *
 * <p>Safe for use by many threads.
 */
public final class PacedClock implements MonotonicClock, AutoCloseable {
    /** Less than a connection interval, so that a step hides nothing the radio would show. */
    private static final long STEP_NANOS = 20_000_000;

    private static final long TICK_MACHINE_NANOS = 100_000;
    private static final long LONGEST_HOLD_MILLIS = 500;

    private final double speed;
    private final Thread ticker;
    private volatile BooleanSupplier behind = () -> false;
    private volatile long nowNanos = STEP_NANOS;
    private volatile boolean closed;

    /**
     * Starts to run at once.
     *
     * @param speed times real time at most, above 0
     */
    public PacedClock(double speed) {
        this.speed = speed;
        ticker = new Thread(this::tick, "fermata-paced-clock");
        ticker.setDaemon(true);
        ticker.start();
    }

    /** Stands still from now on whenever this says so; asked by the clock's own thread. */
    public void holdWhile(BooleanSupplier isBehind) {
        behind = isBehind;
    }

    private void tick() {
        long last = System.nanoTime();
        long heldSince = last;
        while (!closed) {
            LockSupport.parkNanos(TICK_MACHINE_NANOS);
            long machine = System.nanoTime();
            boolean isHeld =
                    behind.getAsBoolean() && machine - heldSince < TimeUnit.MILLISECONDS.toNanos(LONGEST_HOLD_MILLIS);
            if (!isHeld) {
                advance(Math.min(STEP_NANOS, (long) ((machine - last) * speed)));
                heldSince = machine;
            }
            last = machine;
        }
    }

    /** Only the ticker's thread writes. */
    private void advance(long nanos) {
        long next = nowNanos + nanos;
        nowNanos = next;
    }

    @Override
    public long nanos() {
        return nowNanos;
    }

    @Override
    public long machineNanos(Duration duration) {
        return (long) Math.ceil(duration.toNanos() / speed);
    }

    @Override
    public void sleep(Duration duration) throws InterruptedException {
        long until = nowNanos + duration.toNanos();
        while (nowNanos < until && !closed) {
            TimeUnit.NANOSECONDS.sleep(Math.max(TICK_MACHINE_NANOS, machineNanos(Duration.ofNanos(until - nowNanos))));
        }
    }

    @Override
    public void close() {
        closed = true;
    }
}
