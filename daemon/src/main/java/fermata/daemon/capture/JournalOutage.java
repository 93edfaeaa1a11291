package fermata.daemon.capture;

import java.time.Duration;
import java.util.Objects;

/**
 * A stretch of time in which the journal could not take what was heard.
 *
 * @param sinceNanos when the first failed try began, on the capture's monotonic clock
 * @param lasted until it was over, or until now
 * @param fault what was wrong at last
 * @param message what failed, where and what to do
 * @param framesDropped frames that found the queue full meanwhile; all others waited
 */
public record JournalOutage(
        long sinceNanos, Duration lasted, JournalException.Fault fault, String message, long framesDropped) {
    public JournalOutage {
        Objects.requireNonNull(lasted, "lasted");
        Objects.requireNonNull(fault, "fault");
        Objects.requireNonNull(message, "message");
        if (lasted.isNegative() || framesDropped < 0) {
            throw new IllegalArgumentException("an outage of " + lasted + " with " + framesDropped + " frames dropped");
        }
    }
}
