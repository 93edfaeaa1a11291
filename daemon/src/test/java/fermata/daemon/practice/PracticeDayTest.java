package fermata.daemon.practice;

import static org.assertj.core.api.Assertions.assertThat;

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
}
