package fermata.daemon.listening;

import fermata.daemon.reading.PracticeDay;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * Says when a capture is to end so that the next day has one of its own: its practice day is over and nothing was
 * turned for ten minutes, or the machine slept, which monotonic time does not know. A clock that is set ends nothing:
 * the capture's date is set right while it runs. Not thread-safe.
 */
public final class CaptureEnd {
    private static final Duration QUIET = Duration.ofMinutes(10);
    /** Less is no sleep but the trembling of two clocks. */
    private static final Duration SLEEP = Duration.ofMinutes(1);
    /** A capture of an unknown day goes on no longer than a day, so that nobody waits for the reading of a week. */
    private static final Duration LONGEST_UNDATED = Duration.ofDays(1);

    private final long startedNanos;
    private final ZoneId zone;
    private long turnsSeen;
    private long quietSinceNanos;

    /**
     * For a capture that begins now.
     *
     * @param startedNanos its monotonic clock
     * @param zone whose midnights the practice days follow
     */
    public CaptureEnd(long startedNanos, ZoneId zone) {
        this.startedNanos = startedNanos;
        this.zone = zone;
        this.quietSinceNanos = startedNanos;
    }

    /**
     * Whether it should end; ask it often.
     *
     * @param turns how many turns were heard so far: what the board itself asks the cube for does not count
     * @param started civil time of its beginning, if that is known
     * @param slept how long the machine has slept since
     * @param nanos its monotonic clock
     */
    public boolean isDue(long turns, Optional<Instant> started, Duration slept, long nanos) {
        if (turns != turnsSeen) {
            turnsSeen = turns;
            quietSinceNanos = nanos;
        }
        boolean isQuiet = nanos - quietSinceNanos > QUIET.toNanos();
        return slept.compareTo(SLEEP) > 0 || isQuiet && isDayOver(started, Duration.ofNanos(nanos - startedNanos));
    }

    private boolean isDayOver(Optional<Instant> started, Duration elapsed) {
        return started.map(begin -> PracticeDay.of(begin.plus(elapsed), zone).isAfter(PracticeDay.of(begin, zone)))
                .orElse(elapsed.compareTo(LONGEST_UNDATED) > 0);
    }
}
