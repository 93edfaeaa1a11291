package fermata.analysis.record;

import java.time.LocalDate;
import java.util.Objects;

/**
 * The summary of one practice day. Attempts that were set aside, have no times, or ended in a gap count in nothing
 * here.
 *
 * @param day the day on which the practice began; a practice day ends at 04:00 local time
 * @param solves solved attempts
 * @param abandoned abandoned attempts
 * @param best the least turn time
 * @param mean the plain mean of the solved attempts' turn times
 * @param average5 as WCA 9f8 has it: best and worst left out, an abandoned attempt is the worst
 * @param trimmed12 the same over twelve
 * @param spread standard deviation (n - 1) of the solved attempts' turn times
 */
public record NightRecord(
        LocalDate day,
        int solves,
        int abandoned,
        Result best,
        Result mean,
        RunOfResults average5,
        RunOfResults trimmed12,
        Result spread) {
    public NightRecord {
        Objects.requireNonNull(day, "day");
        Objects.requireNonNull(best, "best");
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(average5, "average5");
        Objects.requireNonNull(trimmed12, "trimmed12");
        Objects.requireNonNull(spread, "spread");
    }
}
