package fermata.daemon.cli.asked;

import fermata.daemon.practice.Practice;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Option;

/** {@code --home}, and how a home is opened. */
public final class HomeOption {
    @Option(
            names = "--home",
            paramLabel = "DIR",
            description = "The practice's directory. Default: $$XDG_DATA_HOME/fermata or ~/.local/share/fermata")
    private Path directory;

    /** The home that was named, if one was. */
    public Optional<Home> named() {
        return Optional.ofNullable(directory).map(Home::new);
    }

    /** The option as words, the path a full one; empty if no home was named. */
    public List<String> words() {
        return named().map(home -> List.of(
                        "--home", home.directory().toAbsolutePath().normalize().toString()))
                .orElse(List.of());
    }

    /** The home that was named, or the usual one. */
    public Home home(Terminal terminal) {
        return named().orElseGet(() -> Home.usual(terminal.environment(), terminal.userHome()));
    }

    /** Opens it to write, and says so if a damaged database had to be set aside. */
    public static Store write(Home home, Terminal terminal) {
        Store store = Store.openForWriting(home, () -> LocalDateTime.now(terminal.clock()));
        store.setAside()
                .ifPresent(aside -> terminal.err()
                        .println("warning: the practice in " + home.directory() + " was damaged; it is kept as " + aside
                                + " and a new one is begun"));
        return store;
    }

    /** Asks it something. What is not derived yet is derived and, if nobody else writes, kept. */
    public <T> T read(Terminal terminal, Function<Practice, T> question) {
        Home home = home(terminal);
        try (Store store = Store.openForReading(home)) {
            Practice practice = new Practice(store);
            if (!practice.isStale()) {
                return question.apply(practice);
            }
        }
        try (Store store = Store.tryOpenForWriting(home, () -> LocalDateTime.now(terminal.clock()))
                .orElseGet(() -> Store.openForReading(home))) {
            return question.apply(new Practice(store, new RenewalProgress(terminal.err())));
        }
    }
}
