package fermata.daemon.listening;

import fermata.daemon.reading.PracticeDay;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;

/**
 * Says when a capture is to end so that the next begins with the right date: its practice day is over, or civil time no
 * longer fits its beginning, because the clock was set (a board without a battery clock starts with an old date until
 * the network tells it better) or the machine slept. Never in the middle of a solve: only after ten minutes without a
 * frame, or before the first. Not thread-safe.
 */
public final class CaptureEnd {
    private static final Duration QUIET = Duration.ofMinutes(10);
    /** Less shows on no page; networks set a clock by more, or steer it slowly. */
    private static final Duration JUMP = Duration.ofMinutes(1);

    private final Instant startedWall;
    private final long startedNanos;
    private final ZoneId zone;
    private long framesSeen;
    private long quietSinceNanos;

    /**
     * For a capture that begins now.
     *
     * @param startedWall civil time
     * @param startedNanos the same moment on the capture's monotonic clock
     * @param zone whose midnights the practice days follow
     */
    public CaptureEnd(Instant startedWall, long startedNanos, ZoneId zone) {
        this.startedWall = startedWall;
        this.startedNanos = startedNanos;
        this.zone = zone;
        this.quietSinceNanos = startedNanos;
    }

    /** Whether it should end, given how many frames have come so far and both clocks; ask it often. */
    public boolean isDue(long frames, Instant wall, long nanos) {
        if (frames != framesSeen) {
            framesSeen = frames;
            quietSinceNanos = nanos;
        }
        boolean isQuiet = nanos - quietSinceNanos > QUIET.toNanos();
        return hasJumped(wall, nanos) && (isQuiet || frames == 0) || isQuiet && isDayOver(wall);
    }

    private boolean isDayOver(Instant wall) {
        return PracticeDay.of(wall, zone).isAfter(PracticeDay.of(startedWall, zone));
    }

    private boolean hasJumped(Instant wall, long nanos) {
        Duration byWall = Duration.between(startedWall, wall);
        return byWall.minusNanos(nanos - startedNanos).abs().compareTo(JUMP) > 0;
    }
}
