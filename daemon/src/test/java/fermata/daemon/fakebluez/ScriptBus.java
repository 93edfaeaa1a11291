package fermata.daemon.fakebluez;

import fermata.daemon.time.Deadline;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.virtualcube.PrivateBus;
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

/**
 * The bus of one script: a {@code dbus-daemon} of its own where one is installed, as on every board, else the library's
 * within this process.
 */
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

    private final String address;
    private final AutoCloseable end;

    private ScriptBus(String address, AutoCloseable end) {
        this.address = address;
        this.end = end;
    }

    /** Starts it; it takes clients when this returns. */
    static ScriptBus start() {
        Optional<Path> daemon = installed();
        if (daemon.isEmpty()) {
            PrivateBus bus = PrivateBus.start();
            return new ScriptBus(bus.address(), bus);
        }
        try {
            return start(daemon.get());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ScriptBus start(Path daemon) throws IOException {
        Path directory = Files.createTempDirectory("fermata");
        Path socket = directory.resolve("bus");
        String address = "unix:path=" + socket;
        Path configuration = Files.writeString(directory.resolve("bus.conf"), CONFIGURATION.formatted(address));
        Process process = new ProcessBuilder(daemon.toString(), "--nofork", "--config-file=" + configuration)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        Deadline deadline = Deadline.in(START_LIMIT, MonotonicClock.system());
        while (!Files.exists(socket)) {
            if (deadline.hasPassed() || !process.isAlive()) {
                throw new IOException(daemon + " did not start");
            }
            Thread.onSpinWait();
        }
        return new ScriptBus(address, () -> {
            process.destroy();
            process.waitFor(20, TimeUnit.SECONDS);
            try (Stream<Path> files = Files.walk(directory)) {
                for (Path each : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.deleteIfExists(each);
                }
            }
        });
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
        try {
            end.close();
        } catch (Exception e) {
            throw new IllegalStateException("the script's bus did not end", e);
        }
    }
}
