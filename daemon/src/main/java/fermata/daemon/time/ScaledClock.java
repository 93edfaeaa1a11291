package fermata.daemon.time;

import java.time.Duration;

/** The machine's monotonic clock, stretched about the moment of creation. Immutable. */
final class ScaledClock implements MonotonicClock {
    private final double speed;
    private final long originNanos = System.nanoTime();

    ScaledClock(double speed) {
        if (!(speed > 0) || Double.isInfinite(speed)) {
            throw new IllegalArgumentException("speed " + speed + " is not a finite number above 0 (times real time)");
        }
        this.speed = speed;
    }

    @Override
    public long nanos() {
        long now = System.nanoTime();
        return speed == 1.0 ? now : originNanos + (long) ((now - originNanos) * speed);
    }

    @Override
    public long machineNanos(Duration duration) {
        return (long) Math.ceil(duration.toNanos() / speed);
    }
}
