package fermata.daemon.cli;

import fermata.daemon.practice.Importer;
import fermata.daemon.practice.Importer.Imported;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.Store;
import fermata.daemon.stream.PracticeFile;
import fermata.daemon.stream.TurnStream;
import java.io.IOException;
import java.nio.file.Files;
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
    private static final String PIPED = "-";

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
        String name = file.equals(PIPED) ? "standard input" : file;
        List<TurnStream> streams = PracticeFile.read(name, bytes());
        try (Store store = HomeOption.write(home.home(terminal), terminal)) {
            Imported imported = new Importer(store, terminal.clock())
                    .add(Path.of(name).getFileName().toString(), streams);
            Practice practice = new Practice(store, new RenewalProgress(terminal.err()));
            List<String> solves = practice.solvesOf(imported.captureIds());
            Summary summary = new Summary(name, streams.size(), imported.turns(), imported.captureIds(), solves);
            json.print(terminal, summary, () -> text(summary));
        }
        return 0;
    }

    private static List<String> text(Summary summary) {
        return List.of(NightText.counted(summary.streams(), "stream") + " with "
                + NightText.counted(summary.turns(), "turn") + " imported; "
                + NightText.counted(summary.solves().size(), "attempt") + " found"
                + (summary.solves().isEmpty()
                        ? ""
                        : ", the first is " + summary.solves().get(0)));
    }

    private byte[] bytes() {
        try {
            return file.equals(PIPED) ? terminal.in().readAllBytes() : Files.readAllBytes(Path.of(file));
        } catch (IOException e) {
            throw new CommandFailure("cannot read " + file + ": " + Reasons.of(e), e);
        }
    }
}
