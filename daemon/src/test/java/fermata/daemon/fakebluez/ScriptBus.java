package fermata.daemon.fakebluez;

import fermata.daemon.time.Deadline;
import fermata.daemon.time.MonotonicClock;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The bus of one script: a {@code dbus-daemon} of its own, as on every board; {@code ./verify} brings one. */
final class ScriptBus implements AutoCloseable {
    private static final Duration START_LIMIT = Duration.ofSeconds(20);
    private static final String CONFIGURATION = """
            <!DOCTYPE busconfig PUBLIC "-//freedesktop//DTD D-Bus Bus Configuration 1.0//EN"
             "http://www.freedesktop.org/standards/dbus/1.0/busconfig.dtd">
            <busconfig>
              <type>session</type>
              <listen>%s</listen>
              <auth>EXTERNAL</auth>
              <policy context="default">
                <allow send_destination="*" eavesdrop="true"/>
                <allow eavesdrop="true"/>
                <allow own="*"/>
              </policy>
            </busconfig>
            """;

    private final Path directory;
    private final String address;
    private final Process daemon;

    private ScriptBus(Path directory, String address, Process daemon) {
        this.directory = directory;
        this.address = address;
        this.daemon = daemon;
    }

    /** Starts it; it takes clients when this returns. */
    static ScriptBus start() {
        Path program = installed()
                .orElseThrow(() -> new IllegalStateException(
                        "no dbus-daemon on the PATH, on which these tests stand: sudo apt-get install dbus-daemon"));
        try {
            return start(program);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ScriptBus start(Path program) throws IOException {
        // Short on purpose: a socket's path may have 107 bytes on Linux.
        Path directory = Files.createTempDirectory("fermata");
        Path socket = directory.resolve("bus");
        String address = "unix:path=" + socket;
        Path configuration = Files.writeString(directory.resolve("bus.conf"), CONFIGURATION.formatted(address));
        Process daemon = new ProcessBuilder(program.toString(), "--nofork", "--config-file=" + configuration)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        Deadline deadline = Deadline.in(START_LIMIT, MonotonicClock.system());
        while (!Files.exists(socket)) {
            if (deadline.hasPassed() || !daemon.isAlive()) {
                throw new IOException(program + " did not start");
            }
            Thread.onSpinWait();
        }
        return new ScriptBus(directory, address, daemon);
    }

    /** Lets it hang: its sockets stay, and nothing is passed on. */
    void freeze() throws IOException, InterruptedException {
        signal("-STOP");
    }

    /** Lets it go on. */
    void thaw() throws IOException, InterruptedException {
        signal("-CONT");
    }

    private void signal(String name) throws IOException, InterruptedException {
        new ProcessBuilder("kill", name, Long.toString(daemon.pid())).start().waitFor();
    }

    private static Optional<Path> installed() {
        return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(":"))
                .map(each -> Path.of(each, "dbus-daemon"))
                .filter(Files::isExecutable)
                .findFirst();
    }

    String address() {
        return address;
    }

    @Override
    public void close() {
        daemon.destroyForcibly();
        try (Stream<Path> files = Files.walk(directory)) {
            daemon.waitFor(20, TimeUnit.SECONDS);
            for (Path each : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(each);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("the script's bus left " + directory, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
