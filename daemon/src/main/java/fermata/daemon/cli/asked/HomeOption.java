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

    /**
     * Opens it to add to it; a damaged database is left where it is.
     *
     * @throws fermata.daemon.store.StoreException that says what to do if it is damaged
     */
    public static Store write(Home home, Terminal terminal) {
        return warned(Store.openToAdd(home, () -> LocalDateTime.now(terminal.clock())), terminal);
    }

    /** Opens it to listen or to recover: a damaged database is set aside, which is said, and a new one begun. */
    public static Store listen(Home home, Terminal terminal) {
        return warned(Store.openForWriting(home, () -> LocalDateTime.now(terminal.clock())), terminal);
    }

    private static Store warned(Store store, Terminal terminal) {
        warn(store, terminal);
        return store;
    }

    private static void warn(Store store, Terminal terminal) {
        for (String warning : store.warnings()) {
            terminal.err().println("warning: " + warning);
        }
    }

    /**
     * Asks it something. What is not derived yet is derived and, if nobody else writes and all is well, kept. A
     * database that is damaged is left where it is; what is missing is said.
     */
    public <T> T read(Terminal terminal, Function<Practice, T> question) {
        Home home = home(terminal);
        try (Store store = Store.openForReading(home)) {
            Practice practice = new Practice(store);
            if (store.endsTooEarly() || !practice.isStale()) {
                return answer(store, practice, terminal, question);
            }
        }
        try (Store store = Store.tryOpenToAdd(home, () -> LocalDateTime.now(terminal.clock()))
                .orElseGet(() -> Store.openForReading(home))) {
            return answer(store, new Practice(store, new RenewalProgress(terminal.err())), terminal, question);
        }
    }

    private static <T> T answer(Store store, Practice practice, Terminal terminal, Function<Practice, T> question) {
        try {
            return question.apply(practice);
        } finally {
            // After the question, since what cannot be read is noticed by reading it.
            warn(store, terminal);
        }
    }
}
