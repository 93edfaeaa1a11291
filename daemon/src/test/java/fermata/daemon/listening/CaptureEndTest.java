package fermata.daemon.listening;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CaptureEndTest {
    private static final ZoneId OSLO = ZoneId.of("Europe/Oslo");
    private static final Optional<Instant> STARTED = Optional.of(Instant.parse("2026-10-24T18:00:00Z"));
    private static final long STARTED_NANOS = -5_000_000_000L;

    private final CaptureEnd end = new CaptureEnd(STARTED_NANOS, OSLO);

    @Test
    void shouldEndTenMinutesAfterTheLastTurnWhenTheDayIsOver() {
        // The night in which summer time ends: four o'clock is nine hours and some after 18:00 UTC.
        Duration dayEnds = Duration.ofHours(9);
        assertThat(isDue(5, STARTED, dayEnds.minusSeconds(1))).isFalse();
        assertThat(isDue(6, STARTED, dayEnds.plusMinutes(3)))
                .as("still turning")
                .isFalse();
        assertThat(isDue(6, STARTED, dayEnds.plusMinutes(13))).isFalse();
        assertThat(isDue(6, STARTED, dayEnds.plusMinutes(13).plusSeconds(1))).isTrue();
    }

    @Test
    void shouldNotEndWithinItsDayHoweverQuietItIs() {
        assertThat(isDue(5, STARTED, Duration.ofHours(1))).isFalse();
        assertThat(isDue(5, STARTED, Duration.ofHours(8))).isFalse();
    }

    @Test
    void shouldGoOnWhenTheDateBecomesKnownAndIsTheSameDay() {
        assertThat(isDue(5, Optional.empty(), Duration.ofHours(3))).isFalse();
        assertThat(isDue(5, STARTED, Duration.ofHours(3).plusMinutes(1))).isFalse();
    }

    @Test
    void shouldEndADayLaterWhenTheDateNeverBecomesKnown() {
        assertThat(isDue(5, Optional.empty(), Duration.ofHours(23))).isFalse();
        assertThat(isDue(6, Optional.empty(), Duration.ofHours(24).plusMinutes(1)))
                .as("still turning")
                .isFalse();
        assertThat(isDue(6, Optional.empty(), Duration.ofHours(24).plusMinutes(12)))
                .isTrue();
    }

    @Test
    void shouldEndAtOnceWhenTheMachineSlept() {
        Duration elapsed = Duration.ofHours(1);
        assertThat(end.isDue(5, STARTED, Duration.ofSeconds(1), STARTED_NANOS + elapsed.toNanos()))
                .isFalse();
        assertThat(end.isDue(6, STARTED, Duration.ofHours(7), STARTED_NANOS + elapsed.toNanos()))
                .isTrue();
    }

    private boolean isDue(long turns, Optional<Instant> started, Duration elapsed) {
        return end.isDue(turns, started, Duration.ZERO, STARTED_NANOS + elapsed.toNanos());
    }
}
