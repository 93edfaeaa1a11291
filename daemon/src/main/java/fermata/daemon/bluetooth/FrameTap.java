package fermata.daemon.bluetooth;

import fermata.daemon.capture.CaptureIntake;
import fermata.daemon.time.MonotonicClock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.freedesktop.dbus.interfaces.DBusSigHandler;
import org.freedesktop.dbus.interfaces.Properties;

/**
 * What the signal thread runs for one connection: stamp, copy, enqueue, and nothing else.
 *
 * <p>Assumptions: (1) one signal thread. Guarantees: (1) the stamp is taken before anything else is done with the
 * signal; (2) only the characteristics it was opened with are taken, so that a value that another reader causes is not
 * mistaken for news; (3) what comes before it is opened waits for that, with its stamp: BlueZ renews a subscription by
 * itself when a link comes back (seen with 5.66), long before the services are called resolved; (4) nothing is taken
 * once closed, so that a handler that outlives its connection can do no harm.
 */
final class FrameTap implements DBusSigHandler<Properties.PropertiesChanged> {
    /** Half a minute of the fastest turning; a set-up that takes longer is given up. */
    private static final int MOST_EARLY = 512;

    private record Early(String path, long arrivalNanos, Object value) {}

    private final String devicePath;
    private final MonotonicClock clock;
    private final CaptureIntake intake;
    private final LinkWatch watch;

    private final List<Early> early = new ArrayList<>();
    private Map<String, UUID> uuidByPath = Map.of();
    private boolean opened;
    private volatile boolean takesBattery;
    private volatile boolean closed;
    private volatile long lastFrameNanos;

    FrameTap(String devicePath, MonotonicClock clock, CaptureIntake intake, LinkWatch watch) {
        this.devicePath = devicePath;
        this.clock = clock;
        this.intake = intake;
        this.watch = watch;
        this.lastFrameNanos = clock.nanos();
    }

    /**
     * From now on values of these characteristics are frames, and those that came since the tap was made; {@code
     * takesServiceBattery}: from now on the service's own battery reading too.
     */
    synchronized void open(Map<String, UUID> characteristics, boolean takesServiceBattery) {
        uuidByPath = Map.copyOf(characteristics);
        takesBattery = takesServiceBattery;
        opened = true;
        early.forEach(each -> takeNotified(each.path(), each.arrivalNanos(), each.value()));
        early.clear();
    }

    void close() {
        closed = true;
    }

    long lastFrameNanos() {
        return lastFrameNanos;
    }

    @Override
    public void handle(Properties.PropertiesChanged signal) {
        long arrivalNanos = clock.nanos();
        if (closed) {
            return;
        }
        Map<String, ?> changed = signal.getPropertiesChanged();
        switch (signal.getInterfaceName()) {
            case BluezBus.CHARACTERISTIC -> {
                Object value = changed.get("Value");
                if (value != null) {
                    takeNotified(signal.getPath(), arrivalNanos, value);
                }
            }
            case BluezBus.BATTERY -> {
                if (takesBattery && ObjectSnapshot.bare(changed.get("Percentage")) instanceof Number percent) {
                    take(CaptureTarget.BATTERY_LEVEL, arrivalNanos, new byte[] {percent.byteValue()});
                }
            }
            case BluezBus.DEVICE -> tellWatch(changed);
            default -> {
                // Other interfaces of the device say nothing about turns.
            }
        }
    }

    private synchronized void takeNotified(String path, long arrivalNanos, Object value) {
        UUID uuid = uuidByPath.get(path);
        if (uuid != null) {
            take(uuid, arrivalNanos, value);
        } else if (!opened && early.size() < MOST_EARLY) {
            early.add(new Early(path, arrivalNanos, value));
        }
    }

    private void tellWatch(Map<String, ?> changed) {
        if (ObjectSnapshot.bare(changed.get("ServicesResolved")) instanceof Boolean resolved) {
            watch.deviceResolved(devicePath, resolved);
        }
        if (ObjectSnapshot.bare(changed.get("Connected")) instanceof Boolean connected) {
            watch.deviceConnected(devicePath, connected);
        }
    }

    /** Takes a value, from a signal or from a read. */
    void take(UUID uuid, long arrivalNanos, Object value) {
        lastFrameNanos = arrivalNanos;
        intake.frame(uuid.toString(), arrivalNanos, bytes(ObjectSnapshot.bare(value)));
    }

    /** The library gives an array of bytes as one or as a list, by where it stood. */
    static byte[] bytes(Object value) {
        if (value instanceof byte[] array) {
            return array;
        }
        List<?> list = value instanceof List<?> given ? given : List.of((Object[]) value);
        byte[] bytes = new byte[list.size()];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = ((Number) list.get(i)).byteValue();
        }
        return bytes;
    }
}
