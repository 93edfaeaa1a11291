package fermata.daemon.cli.text;

import fermata.daemon.json.WrittenDay;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Counts and days as people read them. Stateless. */
public final class Words {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.ENGLISH);

    private Words() {}

    /** {@code 1 turn}, {@code 2 turns}. */
    public static String counted(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    /** {@code Tuesday 24 November 2026} for {@code 2026-11-24}, or that the day is not known yet. */
    public static String day(String written) {
        return written.equals(WrittenDay.UNKNOWN_WORD) ? "A day not known yet" : DAY.format(LocalDate.parse(written));
    }
}
