package fermata.daemon.cli;

import fermata.daemon.json.NightsView;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.practice.Practice;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Practice days as people write and read them. Stateless. */
final class Days {
    private static final int OFFERED = 5;
    private static final DateTimeFormatter LONG = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu", Locale.ENGLISH);

    private Days() {}

    static LocalDate parse(String text) {
        try {
            return WrittenDay.parse(text);
        } catch (DateTimeParseException e) {
            throw new CommandFailure("day \"" + text + "\" is not a date such as 2026-11-24, nor the word unknown", e);
        }
    }

    /** For people: {@code Tuesday 24 November 2026}. */
    static String written(String day) {
        return day.equals(WrittenDay.UNKNOWN_WORD) ? "A day not known yet" : LONG.format(LocalDate.parse(day));
    }

    /** The complaint that there was no practice on a day, with the days on which there was. */
    static CommandFailure unknown(LocalDate day, Practice practice) {
        List<NightsView.Item> nights = practice.nights().nights();
        if (nights.isEmpty()) {
            return none();
        }
        return new CommandFailure("no attempt began on " + WrittenDay.of(day) + "; practice days are "
                + nights.stream().limit(OFFERED).map(NightsView.Item::day).collect(Collectors.joining(", "))
                + (nights.size() > OFFERED ? " and " + (nights.size() - OFFERED) + " earlier ones" : ""));
    }

    static CommandFailure none() {
        return new CommandFailure(
                "there is no attempt in this practice yet; record some with listen or bring some in with import");
    }
}
