package fermata.daemon.cli;

import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;

/** What the libraries may say on the terminal: warnings, one line each. */
final class Logs {
    private static final String LINE_FORMAT = "%4$s: %5$s%6$s%n";
    /** Held here because a logger that nobody holds forgets its level. */
    private static final List<Logger> QUIET = Stream.of(
                    "org.freedesktop.dbus", "org.bluez", "org.xnio", "org.jboss.threads", "io.undertow")
            .map(Logger::getLogger)
            .toList();
    /** What is derived again is of interest where nobody waits for an answer. */
    private static final Logger DERIVING = Logger.getLogger("fermata.daemon.practice");

    private Logs() {}

    /** For a command that runs for long and whose terminal is its log. */
    static void tellOfDeriving() {
        DERIVING.setLevel(Level.INFO);
    }

    static void quieten() {
        if (System.getProperty("java.util.logging.SimpleFormatter.format") == null) {
            System.setProperty("java.util.logging.SimpleFormatter.format", LINE_FORMAT);
        }
        QUIET.forEach(logger -> logger.setLevel(Level.WARNING));
        DERIVING.setLevel(Level.WARNING);
    }
}
