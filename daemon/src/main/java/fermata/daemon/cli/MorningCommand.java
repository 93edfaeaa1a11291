package fermata.daemon.cli;

import fermata.daemon.cli.asked.CheckProgress;
import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.text.NightText;
import fermata.daemon.json.NightView;
import fermata.daemon.json.NightsView;
import fermata.daemon.json.Over;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.practice.Practice;
import fermata.daemon.reading.PracticeDay;
import fermata.daemon.store.FileFaults;
import fermata.daemon.store.Home;
import fermata.daemon.store.WholeFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Writes up the practice days that have ended. */
@Command(
        name = "morning",
        mixinStandardHelpOptions = true,
        description = {
            "Write up every practice day that has ended and is not written up yet.",
            "As text and as a page, into the directory nights of the home. Without practice it says nothing. The units"
                    + " of the command timer run it. It also compares all that was recorded with its checksums and says"
                    + " what is not as it was."
        })
final class MorningCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    MorningCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Home where = home.home(terminal);
        if (Files.exists(where.database())) {
            home.read(terminal, practice -> {
                writeUp(practice, where.nights());
                practice.checkRows(new CheckProgress(terminal.err()));
                return null;
            });
        }
        return 0;
    }

    private void writeUp(Practice practice, Path directory) {
        List<LocalDate> days = practice.nights().nights().stream()
                .map(NightsView.Item::day)
                .map(WrittenDay::parse)
                .sorted()
                .toList();
        for (LocalDate day : days) {
            Path page = directory.resolve(WrittenDay.of(day) + ".html");
            boolean hasEnded = !PracticeDay.end(day, terminal.clock().getZone())
                    .isAfter(terminal.clock().instant());
            if (hasEnded && !Files.exists(page)) {
                NightView night = practice.night(day, Over.NIGHT).orElseThrow();
                write(directory.resolve(WrittenDay.of(day) + ".txt"), String.join("\n", NightText.lines(night)) + "\n");
                // Last, and whole or not at all, since it says that the day is done.
                write(page, NightFile.of(practice, day, Over.NIGHT));
                terminal.out().println(page);
            }
        }
    }

    private static void write(Path file, String text) {
        try {
            Home.makeOwn(file.getParent());
            WholeFile.write(file, text, "rw-r--r--");
        } catch (IOException e) {
            throw new CommandFailure("cannot write " + file + ": " + FileFaults.reason(e), e);
        }
    }
}
