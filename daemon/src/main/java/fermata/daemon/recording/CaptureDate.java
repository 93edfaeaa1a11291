package fermata.daemon.recording;

import fermata.daemon.store.CivilTimes;
import fermata.daemon.store.StoreException;
import fermata.daemon.time.CivilClock;
import fermata.daemon.time.CivilReading;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The civil time of a running capture: looks at the clocks and has kept what they say as the capture begins, when the
 * date becomes known, and when a known date was set. Only the date of the beginning moves by it; what was heard lies on
 * monotonic time. Not thread-safe.
 */
public final class CaptureDate {
    private static final Logger LOG = LoggerFactory.getLogger(CaptureDate.class);
    /** Less is the clocks' own trembling; no page shows it. */
    private static final Duration SET = Duration.ofSeconds(1);

    private final CivilTimes kept;
    private final long captureId;
    private final CivilClock clock;
    private Optional<CivilReading> first = Optional.empty();
    private Optional<CivilReading> last = Optional.empty();
    private Optional<CivilReading> newest = Optional.empty();
    private Optional<Instant> started = Optional.empty();

    /**
     * @param kept where it is kept
     * @param captureId the capture that runs
     * @param clock on whose monotonic time the capture began
     */
    public CaptureDate(CivilTimes kept, long captureId, CivilClock clock) {
        this.kept = kept;
        this.captureId = captureId;
        this.clock = clock;
    }

    /** Looks once; cheap unless there is something to keep. What cannot be kept now is tried again at the next look. */
    public void look() {
        CivilReading now = clock.read();
        newest = Optional.of(now);
        if (last.isPresent() && !saysMoreThan(last.get(), now)) {
            return;
        }
        try {
            started = kept.note(captureId, now);
            last = Optional.of(now);
            first = first.or(() -> last);
        } catch (StoreException e) {
            LOG.debug("what the clocks say cannot be kept now: {}", e.getMessage());
        }
    }

    private static boolean saysMoreThan(CivilReading before, CivilReading now) {
        return now.isKnown() && (!before.isKnown() || now.setSince(before).compareTo(SET) > 0);
    }

    /** When the capture began, if that is known. */
    public Optional<Instant> started() {
        return started;
    }

    /** How long the machine has slept since the first look. */
    public Duration slept() {
        return first.map(begin -> Duration.ofNanos(newest.orElse(begin).asleepNanos() - begin.asleepNanos()))
                .orElse(Duration.ZERO);
    }
}
