package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.text.Words;
import fermata.daemon.json.RecoveryView;
import fermata.daemon.store.Home;
import fermata.daemon.store.Missing;
import fermata.daemon.store.Recovered;
import fermata.daemon.store.SetAside;
import fermata.daemon.store.Store;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Brings back what can be read of a damaged practice. */
@Command(
        name = "recover",
        mixinStandardHelpOptions = true,
        description = {
            "Bring back into the practice what can be read of a damaged one.",
            "Without FILE: of all that was set aside, and of the practice itself, which is set aside if it is damaged."
                    + " What is there already is left as it is, so that it may be done again."
        })
final class RecoverCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Option(
            names = "--dismiss",
            description = "Bring nothing back: name no more what was set aside and what is missing. Deletes nothing.")
    private boolean dismiss;

    @Parameters(paramLabel = "FILE", arity = "0..*", description = "A damaged database, or any other of fermata's.")
    private List<Path> files = new ArrayList<>();

    RecoverCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (dismiss && !files.isEmpty()) {
            throw new CommandFailure("--dismiss takes no FILE: it is of all that was set aside");
        }
        Home where = home.home(terminal);
        try (Store store = Store.openForWriting(where, () -> LocalDateTime.now(terminal.clock()))) {
            RecoveryView view = dismiss ? dismissed(store) : recovered(store);
            json.print(terminal, view, () -> text(view));
        }
        return 0;
    }

    private RecoveryView dismissed(Store store) {
        store.dismiss();
        return new RecoveryView(List.of(), ranges(store));
    }

    private RecoveryView recovered(Store store) {
        List<RecoveryView.Source> sources = new ArrayList<>();
        for (Path file : files.isEmpty() ? SetAside.waiting(store.home()) : files) {
            Recovered recovered = store.recover(file);
            sources.add(new RecoveryView.Source(
                    recovered.file().toString(),
                    recovered.captures(),
                    recovered.frames(),
                    recovered.events(),
                    recovered.alreadyThere()));
        }
        return new RecoveryView(sources, ranges(store));
    }

    private static List<RecoveryView.Range> ranges(Store store) {
        return store.missing().stream()
                .map(missing -> new RecoveryView.Range(word(missing), missing.first(), missing.last()))
                .toList();
    }

    private static String word(Missing missing) {
        return missing.kind().name().toLowerCase(Locale.ROOT);
    }

    private List<String> text(RecoveryView view) {
        List<String> lines = new ArrayList<>();
        for (RecoveryView.Source source : view.recovered()) {
            lines.add(source.file() + ": " + Words.counted(source.captures(), "capture") + ", "
                    + Words.counted(source.frames(), "frame") + " and "
                    + Words.counted(source.events(), "told event") + " came back"
                    + (source.alreadyThere() > 0 ? ", " + source.alreadyThere() + " were there already" : ""));
        }
        for (RecoveryView.Range range : view.missing()) {
            lines.add("missing: " + range.kind() + " " + range.first()
                    + (range.last() > range.first() ? " to " + range.last() : ""));
        }
        if (!view.missing().isEmpty()) {
            lines.add(
                    "Another copy may hold them: fermata recover FILE. fermata recover --dismiss names them no more.");
        } else if (lines.isEmpty()) {
            lines.add(dismiss ? "Nothing is named any more." : "Nothing to recover: nothing is set aside or missing.");
        }
        return lines;
    }
}
