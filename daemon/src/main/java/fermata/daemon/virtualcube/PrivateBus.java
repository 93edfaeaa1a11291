package fermata.daemon.virtualcube;

import fermata.daemon.time.Deadline;
import fermata.daemon.time.MonotonicClock;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.freedesktop.dbus.bin.EmbeddedDBusDaemon;
import org.freedesktop.dbus.exceptions.InvalidBusAddressException;

/**
 * A D-Bus bus of our own on a Unix socket in a fresh directory, within this process: no bus daemon needs to be
 * installed.
 */
public final class PrivateBus implements AutoCloseable {
    private static final Duration START_LIMIT = Duration.ofSeconds(20);

    private final Path directory;
    private final Path socket;
    private final EmbeddedDBusDaemon daemon;

    private PrivateBus(Path directory) throws InvalidBusAddressException {
        this.directory = directory;
        // Short on purpose: a socket's path may have 107 bytes on Linux.
        this.socket = directory.resolve("bus");
        this.daemon = new EmbeddedDBusDaemon(address() + ",listen=true");
    }

    /** Starts the bus; it is ready when this returns. */
    public static PrivateBus start() {
        try {
            PrivateBus bus = new PrivateBus(Files.createTempDirectory("fermata"));
            bus.daemon.startInBackgroundAndWait(START_LIMIT.toMillis());
            bus.awaitRunning();
            return bus;
        } catch (IOException e) {
            throw new UncheckedIOException("no directory for the private bus: " + e.getMessage(), e);
        } catch (InvalidBusAddressException e) {
            throw new IllegalStateException("the private bus refuses its own address", e);
        }
    }

    /** The library says "started" once it is bound; a client that comes before its loop runs would be its last. */
    private void awaitRunning() {
        Deadline deadline = Deadline.in(START_LIMIT, MonotonicClock.system());
        while (!daemon.isRunning()) {
            if (deadline.hasPassed()) {
                throw new IllegalStateException("the private bus at " + socket + " did not start");
            }
            Thread.onSpinWait();
        }
    }

    /** What a client connects to: {@code unix:path=...}. */
    public String address() {
        return "unix:path=" + socket;
    }

    @Override
    public void close() {
        try {
            daemon.close();
            Files.deleteIfExists(socket);
            Files.deleteIfExists(directory);
        } catch (IOException e) {
            throw new UncheckedIOException("the private bus at " + socket + " did not go cleanly", e);
        }
    }
}
