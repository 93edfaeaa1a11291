package fermata.daemon.cli;

import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import java.util.Objects;

/**
 * What surrounds a command.
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
        environment = Map.copyOf(environment);
        Objects.requireNonNull(userHome, "userHome");
        Objects.requireNonNull(clock, "clock");
    }

    /** The process's own. */
    static Terminal ofProcess() {
        return new Terminal(
                System.in,
                new PrintWriter(System.out, true),
                new PrintWriter(System.err, true),
                System.getenv(),
                Path.of(System.getProperty("user.home")),
                Clock.systemDefaultZone());
    }
}
