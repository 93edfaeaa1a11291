package fermata.daemon.bluetooth;

import java.time.Duration;

/**
 * Says when a scan that hears nothing at all is to be begun anew, because a controller can hang without an error. First
 * after 90 s, which is the patience of long-running scanners elsewhere, then after twice as long each time, an hour at
 * most: a cube that sleeps is as silent, and the scan has nothing else to lose. Owned by the central's thread.
 */
final class ScanWatchdog {
    static final Duration FIRST_SILENCE = Duration.ofSeconds(90);
    private static final Duration LONGEST_SILENCE = Duration.ofHours(1);

    private Duration patience = FIRST_SILENCE;
    private long silentSinceNanos;
    private int restarts;

    /** For a scan that begins at a reading of the capture's clock. */
    ScanWatchdog(long nowNanos) {
        silentSinceNanos = nowNanos;
    }

    /** Some device advertised, or nobody listened: silence begins anew. */
    void heard(long nowNanos) {
        silentSinceNanos = nowNanos;
        patience = FIRST_SILENCE;
    }

    boolean isDue(long nowNanos) {
        return nowNanos - silentSinceNanos >= patience.toNanos();
    }

    void restarted(long nowNanos) {
        silentSinceNanos = nowNanos;
        patience = patience.multipliedBy(2).compareTo(LONGEST_SILENCE) < 0 ? patience.multipliedBy(2) : LONGEST_SILENCE;
        restarts++;
    }

    /** How often the scan was begun anew. */
    int restarts() {
        return restarts;
    }
}
