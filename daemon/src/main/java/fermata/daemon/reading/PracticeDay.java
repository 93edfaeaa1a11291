package fermata.daemon.reading;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/** Which day practice belongs to: what is done after midnight belongs to the evening before. Stateless. */
public final class PracticeDay {
    /** The local hour at which a practice day ends. */
    public static final int END_HOUR = 4;

    private PracticeDay() {}

    /** When a practice day ends by the clocks of a zone: 23 to 25 hours after it began, as the clocks change. */
    public static Instant end(LocalDate day, ZoneId zone) {
        return day.plusDays(1).atTime(END_HOUR, 0).atZone(zone).toInstant();
    }

    /** The practice day of a moment, by the clocks of a zone. */
    public static LocalDate of(Instant moment, ZoneId zone) {
        return moment.atZone(zone).toLocalDateTime().minusHours(END_HOUR).toLocalDate();
    }
}
