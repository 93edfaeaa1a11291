package fermata.daemon.cli;

import fermata.daemon.text.Visible;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.logging.Formatter;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.stream.Stream;

/** What the libraries may say on the terminal: warnings, one line each. */
final class Logs {
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
        for (Handler handler : Logger.getLogger("").getHandlers()) {
            handler.setFormatter(new VisibleLines());
        }
        QUIET.forEach(logger -> logger.setLevel(Level.WARNING));
        DERIVING.setLevel(Level.WARNING);
    }

    /** A line each, then what was thrown. Whatever a message quotes stays within its line. */
    static final class VisibleLines extends Formatter {
        @Override
        public String format(LogRecord told) {
            StringWriter thrown = new StringWriter();
            if (told.getThrown() != null) {
                told.getThrown().printStackTrace(new PrintWriter(thrown, true));
            }
            return told.getLevel() + ": " + Visible.line(formatMessage(told)) + System.lineSeparator()
                    + Visible.lines(thrown.toString());
        }
    }
}
