package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.Days;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.OverWord;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.text.NightText;
import fermata.daemon.json.NightView;
import fermata.daemon.json.NightsView;
import fermata.daemon.json.Over;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.FileFaults;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Sums up a practice day. */
@Command(
        name = "night",
        mixinStandardHelpOptions = true,
        description = "Sum up a practice day, the week or all days up to it. A day ends at 04:00 local time.")
final class NightCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Parameters(
            paramLabel = "DAY",
            arity = "0..1",
            description = "The practice day, such as 2026-11-24, or unknown. Default: the last one with practice.")
    private String day;

    @Option(
            names = "--over",
            paramLabel = "RANGE",
            defaultValue = "night",
            converter = OverWord.class,
            description = "What is summed up: night, week (the seven days up to it) or all (up to it). Default: night.")
    private Over over;

    @Option(
            names = "--out",
            paramLabel = "FILE.html",
            description = "Write the page of it to a new file that needs no network, instead of printing.")
    private Path out;

    NightCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (out != null) {
            String page = home.read(terminal, practice -> NightFile.of(practice, day(practice), over));
            write(page);
            return 0;
        }
        NightView night = home.read(terminal, this::ask);
        json.print(terminal, night, () -> NightText.lines(night));
        return 0;
    }

    private NightView ask(Practice practice) {
        return practice.night(day(practice), over).orElseThrow();
    }

    private LocalDate day(Practice practice) {
        LocalDate wanted = day == null ? last(practice) : Days.parse(day);
        boolean isKnown = practice.nights().nights().stream()
                .anyMatch(night -> night.day().equals(WrittenDay.of(wanted)));
        if (!isKnown) {
            throw Days.unknown(wanted, practice);
        }
        return wanted;
    }

    private void write(String page) {
        try {
            Files.writeString(out, page, StandardOpenOption.CREATE_NEW);
        } catch (IOException e) {
            throw new CommandFailure("cannot write " + out + ": " + FileFaults.reason(e), e);
        }
        terminal.err().println("wrote " + out);
    }

    private static LocalDate last(Practice practice) {
        List<NightsView.Item> nights = practice.nights().nights();
        if (nights.isEmpty()) {
            throw Days.none();
        }
        return WrittenDay.parse(nights.get(0).day());
    }
}
