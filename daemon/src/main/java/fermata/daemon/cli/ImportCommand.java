package fermata.daemon.cli;

import fermata.daemon.practice.Importer;
import fermata.daemon.practice.Importer.Imported;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.FileFaults;
import fermata.daemon.store.Store;
import fermata.daemon.stream.PracticeFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
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
            "A file with a wrong line is refused whole."
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
    private record Summary(String file, int streams, long turns, List<Long> captures, List<String> solves) {}

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
            Summary summary =
                    new Summary(name, captures.size(), imported.turns(), captures, practice.solvesOf(captures));
            json.print(terminal, summary, () -> text(summary));
        }
    }

    private static List<String> text(Summary summary) {
        return List.of(NightText.counted(summary.streams(), "stream") + " with "
                + NightText.counted(summary.turns(), "turn") + " imported; "
                + NightText.counted(summary.solves().size(), "attempt") + " found"
                + (summary.solves().isEmpty()
                        ? ""
                        : ", the first is " + summary.solves().get(0)));
    }
}
