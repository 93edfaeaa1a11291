package fermata.daemon.cli;

import fermata.daemon.json.NightView;
import fermata.daemon.json.NightsView;
import fermata.daemon.practice.Practice;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Sums up a practice day. */
@Command(
        name = "night",
        mixinStandardHelpOptions = true,
        description = "Sum up a practice day. A day ends at 04:00 local time.")
final class NightCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Parameters(
            paramLabel = "DAY",
            arity = "0..1",
            description = "The practice day, such as 2026-11-24. Default: the last one with practice.")
    private String day;

    NightCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        NightView night = home.read(terminal, this::ask);
        json.print(terminal, night, () -> NightText.lines(night));
        return 0;
    }

    private NightView ask(Practice practice) {
        LocalDate wanted = day == null ? last(practice) : Days.parse(day);
        return practice.night(wanted).orElseThrow(() -> Days.unknown(wanted, practice));
    }

    private static LocalDate last(Practice practice) {
        List<NightsView.Item> nights = practice.nights().nights();
        if (nights.isEmpty()) {
            throw Days.none();
        }
        return LocalDate.parse(nights.get(0).day());
    }
}
