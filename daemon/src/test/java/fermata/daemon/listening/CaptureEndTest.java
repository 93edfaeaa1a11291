package fermata.daemon.listening;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CaptureEndTest {
    private static final ZoneId OSLO = ZoneId.of("Europe/Oslo");
    private static final Instant STARTED = Instant.parse("2026-10-24T18:00:00Z");
    private static final long STARTED_NANOS = -5_000_000_000L;

    private final CaptureEnd end = new CaptureEnd(STARTED, STARTED_NANOS, OSLO);

    @Test
    void shouldEndTenMinutesAfterTheLastFrameWhenTheDayIsOver() {
        // The night in which summer time ends: four o'clock is nine hours and some after 18:00 UTC.
        Duration dayEnds = Duration.ofHours(9);
        assertThat(isDue(5, dayEnds.minusSeconds(1))).isFalse();
        assertThat(isDue(6, dayEnds.plusMinutes(3))).as("still turning").isFalse();
        assertThat(isDue(6, dayEnds.plusMinutes(13))).isFalse();
        assertThat(isDue(6, dayEnds.plusMinutes(13).plusSeconds(1))).isTrue();
    }

    @Test
    void shouldNotEndWithinItsDayHoweverQuietItIs() {
        assertThat(isDue(5, Duration.ofHours(1))).isFalse();
        assertThat(isDue(5, Duration.ofHours(8))).isFalse();
    }

    @ParameterizedTest
    @ValueSource(longs = {-86_400 * 400, -61, 61, 3 * 3_600, 86_400 * 3})
    void shouldEndAtOnceWhenTheClockIsSetBeforeAnythingWasHeard(long bySeconds) {
        Duration elapsed = Duration.ofSeconds(40);
        assertThat(isDue(0, elapsed)).isFalse();

        Instant set = STARTED.plus(elapsed).plusSeconds(bySeconds);
        assertThat(end.isDue(0, set, STARTED_NANOS + elapsed.toNanos())).isTrue();
    }

    @Test
    void shouldWaitForQuietWhenTheClockIsSetDuringPractice() {
        Duration set = Duration.ofHours(3);
        assertThat(end.isDue(9, STARTED.plus(set).plusSeconds(60), nanos(60))).isFalse();
        assertThat(end.isDue(9, STARTED.plus(set).plusSeconds(660), nanos(660))).isFalse();
        assertThat(end.isDue(9, STARTED.plus(set).plusSeconds(661), nanos(661))).isTrue();
    }

    @Test
    void shouldLiveWithAClockThatIsSteeredSlowly() {
        for (int hour = 1; hour < 8; hour++) {
            Instant wall = STARTED.plusSeconds(hour * 3_600L + 5L * hour);
            assertThat(end.isDue(0, wall, nanos(hour * 3_600L))).isFalse();
        }
    }

    private boolean isDue(long frames, Duration elapsed) {
        return end.isDue(frames, STARTED.plus(elapsed), STARTED_NANOS + elapsed.toNanos());
    }

    private static long nanos(long seconds) {
        return STARTED_NANOS + Duration.ofSeconds(seconds).toNanos();
    }
}
