package fermata.daemon.reading;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PracticeDayTest {
    @ParameterizedTest
    @CsvSource({
        "2026-11-24T20:00:00Z, Europe/Oslo, 2026-11-24",
        "2026-11-25T02:59:59Z, Europe/Oslo, 2026-11-24",
        "2026-11-25T03:00:00Z, Europe/Oslo, 2026-11-25",
        // The night the clocks go back (2026-10-25 03:00 to 02:00): 04:00 local is still the end.
        "2026-10-25T02:59:59Z, Europe/Oslo, 2026-10-24",
        "2026-10-25T03:00:00Z, Europe/Oslo, 2026-10-25",
        "2026-11-25T03:00:00Z, Pacific/Auckland, 2026-11-25",
    })
    void shouldEndADayAtFourInTheMorning(Instant moment, String zone, LocalDate day) {
        assertThat(PracticeDay.of(moment, ZoneId.of(zone))).isEqualTo(day);
    }

    /** IANA time zones: Oslo changes on 29 March and 25 October 2026, Lord Howe by half an hour on 5 April. */
    @ParameterizedTest
    @CsvSource({
        "2026-03-28, Europe/Oslo, PT23H",
        "2026-10-24, Europe/Oslo, PT25H",
        "2026-11-24, Europe/Oslo, PT24H",
        "2026-04-04, Australia/Lord_Howe, PT24H30M",
    })
    void shouldLastAsLongAsTheClocksSayAndHoldEveryMomentOnce(LocalDate day, ZoneId zone, Duration length) {
        Instant begin = PracticeDay.end(day.minusDays(1), zone);
        Instant end = PracticeDay.end(day, zone);

        assertThat(Duration.between(begin, end)).isEqualTo(length);
        for (Instant moment = begin; moment.isBefore(end); moment = moment.plus(Duration.ofMinutes(10))) {
            assertThat(PracticeDay.of(moment, zone)).as("%s", moment).isEqualTo(day);
        }
        assertThat(PracticeDay.of(begin.minusNanos(1), zone)).isEqualTo(day.minusDays(1));
        assertThat(PracticeDay.of(end, zone)).isEqualTo(day.plusDays(1));
    }
}
