package fermata.daemon.cli.asked;

import fermata.daemon.text.VisibleWriter;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Objects;

/**
 * What surrounds a command. Whatever is printed is made visible on the way: nothing that a cube calls itself or a file
 * says is obeyed by a terminal.
 *
 * @param in what is piped in
 * @param out where results go
 * @param err where progress, warnings and errors go
 * @param environment the process's variables
 * @param userHome the user's home directory
 * @param clock civil time and the local zone
 */
public record Terminal(
        InputStream in, PrintWriter out, PrintWriter err, Map<String, String> environment, Path userHome, Clock clock) {
    public Terminal {
        Objects.requireNonNull(in, "in");
        Objects.requireNonNull(out, "out");
        Objects.requireNonNull(err, "err");
        out = VisibleWriter.before(out);
        err = VisibleWriter.before(err);
        environment = Map.copyOf(environment);
        Objects.requireNonNull(userHome, "userHome");
        Objects.requireNonNull(clock, "clock");
    }

    /** The process's own. It speaks UTF-8 whatever the locale: an export must not lose letters of a name. */
    public static Terminal ofProcess() {
        return new Terminal(
                System.in,
                new PrintWriter(System.out, true, StandardCharsets.UTF_8),
                new PrintWriter(System.err, true, StandardCharsets.UTF_8),
                System.getenv(),
                userHome(System.getenv("HOME")),
                Clock.systemDefaultZone());
    }

    /** Java asks the system's list of users, everybody else the environment. */
    private static Path userHome(String home) {
        return Path.of(home != null && home.startsWith("/") ? home : System.getProperty("user.home"));
    }
}
