package fermata.daemon.civil;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.freedesktop.dbus.interfaces.Properties;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Asks whether the network's time steers the system clock.
 *
 * <p>systemd's answer is the kernel's own flag, whichever time service sets it, and is taken back when somebody sets
 * the clock by hand. Where nobody answers in time, timesyncd's file must do.
 */
final class NetworkTime {
    private static final Logger LOG = LoggerFactory.getLogger(NetworkTime.class);
    private static final String NAME = "org.freedesktop.timedate1";
    private static final String PATH = "/org/freedesktop/timedate1";
    /** Practice does not wait for it, and a bus that is there answers within milliseconds. */
    private static final Duration PATIENCE = Duration.ofSeconds(2);

    private final String busAddress;
    private final Path synchronizedFile;
    private final Duration patience;

    /**
     * @param busAddress a D-Bus address; empty for the system's
     * @param synchronizedFile what timesyncd makes once it has set the clock
     * @param patience how long an answer is waited for
     */
    NetworkTime(String busAddress, Path synchronizedFile, Duration patience) {
        this.busAddress = busAddress;
        this.synchronizedFile = synchronizedFile;
        this.patience = patience;
    }

    /** The system's own. */
    static NetworkTime ofSystem() {
        return new NetworkTime("", Path.of("/run/systemd/timesync/synchronized"), PATIENCE);
    }

    boolean isSteering() {
        return asked().orElseGet(() -> Files.exists(synchronizedFile));
    }

    private Optional<Boolean> asked() {
        CompletableFuture<Optional<Boolean>> answer = CompletableFuture.supplyAsync(this::ask);
        try {
            return answer.get(patience.toMillis(), TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            LOG.debug("{} has not answered within {} ms", NAME, patience.toMillis());
        } catch (ExecutionException e) {
            LOG.debug("{} cannot be asked: {}", NAME, String.valueOf(e.getCause()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return Optional.empty();
    }

    private Optional<Boolean> ask() {
        DBusConnectionBuilder builder = busAddress.isEmpty()
                ? DBusConnectionBuilder.forSystemBus()
                : DBusConnectionBuilder.forAddress(busAddress);
        try (DBusConnection connection = builder.withShared(false).build()) {
            Object answer =
                    connection.getRemoteObject(NAME, PATH, Properties.class).Get(NAME, "NTPSynchronized");
            return answer instanceof Boolean steered ? Optional.of(steered) : Optional.empty();
        } catch (DBusException | DBusExecutionException | java.io.IOException e) {
            LOG.debug("{} is not there: {}", NAME, e.getMessage());
            return Optional.empty();
        }
    }
}
