package fermata.daemon.cli;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Ctrl-C and the service manager's TERM: lets a command end in order before the process does.
 *
 * <p>The JVM ends when its shutdown hooks have; the hook here waits, within reason, until the command has closed what
 * it opened.
 */
final class StopSignal implements AutoCloseable {
    /** Below the 90 s after which systemd kills (systemd.service(5), TimeoutStopSec). */
    private static final Duration LONGEST_ENDING = Duration.ofSeconds(60);

    private final CountDownLatch asked = new CountDownLatch(1);
    private final CountDownLatch ended = new CountDownLatch(1);

    private StopSignal() {}

    static StopSignal install() {
        StopSignal signal = new StopSignal();
        Runtime.getRuntime().addShutdownHook(new Thread(signal::stopAndWait, "fermata-stop"));
        return signal;
    }

    private void stopAndWait() {
        asked.countDown();
        try {
            ended.await(LONGEST_ENDING.toSeconds(), TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Waits up to so long; true once somebody asked to stop. */
    boolean await(Duration limit) {
        try {
            return asked.await(limit.toMillis(), TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return true;
        }
    }

    /** Says that the command has ended. */
    @Override
    public void close() {
        ended.countDown();
    }
}
