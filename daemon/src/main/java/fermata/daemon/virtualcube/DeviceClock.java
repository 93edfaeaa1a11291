package fermata.daemon.virtualcube;

import java.util.concurrent.TimeUnit;

/**
 * The clock inside the cube: counts milliseconds, and not quite as fast as the world.
 *
 * @param startMillis its reading when the script begins
 * @param skewPpm how much faster than the world it runs, in parts per million; a 32 kHz crystal is within 20
 */
public record DeviceClock(long startMillis, double skewPpm) {
    public DeviceClock {
        if (startMillis < 0 || !(Math.abs(skewPpm) < 10_000)) {
            throw new IllegalArgumentException("startMillis " + startMillis + " must not be negative, skewPpm "
                    + skewPpm + " must be within 10000");
        }
    }

    /** The world's nanoseconds since the script began, at so many microseconds of device time since then. */
    long worldNanos(long deviceMicros) {
        return Math.round(deviceMicros * 1000.0 / (1 + skewPpm * 1e-6));
    }

    /** The reading at so many of the world's nanoseconds since the script began. */
    long readingMillis(long worldNanos) {
        return startMillis + Math.max(0, TimeUnit.NANOSECONDS.toMillis(Math.round(worldNanos * (1 + skewPpm * 1e-6))));
    }

    /** The reading at so many microseconds of device time since the script began. */
    long readingAtMicros(long deviceMicros) {
        return startMillis + deviceMicros / 1000;
    }
}
