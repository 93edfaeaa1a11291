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
    private EmbeddedDBusDaemon daemon;

    private PrivateBus(Path directory) {
        this.directory = directory;
        // Short on purpose: a socket's path may have 107 bytes on Linux.
        this.socket = directory.resolve("bus");
        this.daemon = newDaemon();
    }

    private EmbeddedDBusDaemon newDaemon() {
        try {
            EmbeddedDBusDaemon fresh = new EmbeddedDBusDaemon(address() + ",listen=true");
            fresh.startInBackgroundAndWait(START_LIMIT.toMillis());
            awaitRunning(fresh);
            return fresh;
        } catch (InvalidBusAddressException e) {
            throw new IllegalStateException("the private bus refuses its own address", e);
        }
    }

    /** Starts the bus; it is ready when this returns. */
    public static PrivateBus start() {
        try {
            return new PrivateBus(Files.createTempDirectory("fermata"));
        } catch (IOException e) {
            throw new UncheckedIOException("no directory for the private bus: " + e.getMessage(), e);
        }
    }

    /** Ends the bus under everybody who is on it, and starts another at the same address. */
    void restart() {
        try {
            end();
        } catch (IOException e) {
            throw new UncheckedIOException("the private bus at " + socket + " did not go cleanly", e);
        }
        daemon = newDaemon();
    }

    /** The library says "started" once it is bound; a client that comes before its loop runs would be its last. */
    private void awaitRunning(EmbeddedDBusDaemon fresh) {
        Deadline deadline = Deadline.in(START_LIMIT, MonotonicClock.system());
        while (!fresh.isRunning()) {
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

    private void end() throws IOException {
        daemon.close();
        Files.deleteIfExists(socket);
    }

    @Override
    public void close() {
        try {
            end();
            Files.deleteIfExists(directory);
        } catch (IOException e) {
            throw new UncheckedIOException("the private bus at " + socket + " did not go cleanly", e);
        }
    }
}
