package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.RenewalProgress;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.asked.WrittenFile;
import fermata.daemon.cli.text.Words;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.FileFaults;
import fermata.daemon.store.Store;
import fermata.daemon.telling.Importer;
import fermata.daemon.telling.Importer.Imported;
import fermata.daemon.turnfile.PracticeFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Brings files in. */
@Command(
        name = "import",
        mixinStandardHelpOptions = true,
        description = {
            "Bring in turn streams or reconstructions, one JSON object a line.",
            "A file with a wrong line is refused whole; what is here already is not added again."
        })
final class ImportCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "FILE", description = "The file, or - for what is piped in.")
    private String file;

    ImportCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    /** What {@code --json} prints. */
    private record Summary(
            String file, int streams, long turns, List<Long> captures, List<String> solves, List<Long> already) {}

    @Override
    public Integer call() {
        String name = WrittenFile.name(file);
        try (InputStream in = WrittenFile.open(terminal, file)) {
            add(name, new PracticeFile(name, in));
        } catch (UncheckedIOException e) {
            throw new CommandFailure("cannot read " + file + ": " + FileFaults.reason(e.getCause()), e);
        } catch (IOException e) {
            throw new CommandFailure("cannot read " + file + ": " + FileFaults.reason(e), e);
        }
        return 0;
    }

    private void add(String name, PracticeFile streams) {
        try (Store store = HomeOption.write(home.home(terminal), terminal)) {
            Imported imported = new Importer(store, terminal.clock())
                    .add(Path.of(name).getFileName().toString(), streams);
            Practice practice = new Practice(store, new RenewalProgress(terminal.err()));
            List<Long> captures = imported.captureIds();
            Summary summary = new Summary(
                    name,
                    captures.size(),
                    imported.turns(),
                    captures,
                    practice.solvesOf(captures),
                    imported.alreadyThere());
            json.print(terminal, summary, () -> text(summary));
        }
    }

    private static List<String> text(Summary summary) {
        List<String> lines = new ArrayList<>();
        if (summary.already().isEmpty() || summary.streams() > 0) {
            lines.add(added(summary));
        }
        if (!summary.already().isEmpty()) {
            lines.add(already(summary));
        }
        return lines;
    }

    private static String added(Summary summary) {
        return Words.counted(summary.streams(), "stream") + " with "
                + Words.counted(summary.turns(), "turn") + " imported; "
                + Words.counted(summary.solves().size(), "attempt") + " found"
                + (summary.solves().isEmpty()
                        ? ""
                        : ", the first is " + summary.solves().get(0));
    }

    private static String already(Summary summary) {
        int streams = summary.already().size();
        return Words.counted(streams, "stream") + (streams == 1 ? " is" : " are")
                + " in this practice already, the first as capture "
                + summary.already().get(0) + "; "
                + (summary.streams() == 0 ? "nothing was added" : "not added again");
    }
}
