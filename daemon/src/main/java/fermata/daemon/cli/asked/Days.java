package fermata.daemon.cli.asked;

import fermata.daemon.json.NightsView;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.practice.Practice;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.stream.Collectors;

/** Practice days as people name them. Stateless. */
public final class Days {
    private static final int OFFERED = 5;

    private Days() {}

    /** A day such as {@code 2026-11-24}. */
    public static LocalDate parse(String text) {
        try {
            return WrittenDay.parse(text);
        } catch (DateTimeParseException e) {
            throw new CommandFailure("day \"" + text + "\" is not a date such as 2026-11-24, nor the word unknown", e);
        }
    }

    /** The complaint that there was no practice on a day, with the days on which there was. */
    public static CommandFailure unknown(LocalDate day, Practice practice) {
        List<NightsView.Item> nights = practice.nights().nights();
        if (nights.isEmpty()) {
            return none();
        }
        return new CommandFailure("no attempt began on " + WrittenDay.of(day) + "; practice days are "
                + nights.stream().limit(OFFERED).map(NightsView.Item::day).collect(Collectors.joining(", "))
                + (nights.size() > OFFERED ? " and " + (nights.size() - OFFERED) + " earlier ones" : ""));
    }

    /** The complaint that there is no practice at all. */
    public static CommandFailure none() {
        return new CommandFailure(
                "there is no attempt in this practice yet; record some with listen or bring some in with import");
    }
}
