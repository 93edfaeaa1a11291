package fermata.daemon.bluetooth;

import fermata.daemon.capture.CaptureIntake;
import fermata.daemon.time.MonotonicClock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.freedesktop.dbus.interfaces.DBusSigHandler;
import org.freedesktop.dbus.messages.DBusSignal;

/**
 * What the signal thread runs for one device: stamp, copy, enqueue, and nothing else.
 *
 * <p>Assumptions: (1) one signal thread. Guarantees: (1) the stamp is taken before anything else is done with the
 * signal; (2) only the characteristics it was opened with are taken, so that a value that another reader causes is not
 * mistaken for news; (3) what comes before it is opened waits for that, with its stamp: BlueZ renews a subscription by
 * itself when a link comes back (seen with 5.66), long before the services are called resolved, and a link may fall and
 * stand again within milliseconds; (4) nothing is taken once closed, so that a handler that outlives its connection can
 * do no harm.
 */
final class FrameTap implements DBusSigHandler<DBusSignal> {
    /** Some minutes of the fastest turning; half a megabyte at most. */
    private static final int MOST_EARLY = 4096;

    private record Early(String path, long arrivalNanos, byte[] bytes) {}

    private final String devicePath;
    private final Set<UUID> spare;
    private final MonotonicClock clock;
    private final CaptureIntake intake;
    private final LinkWatch watch;

    private final List<Early> early = new ArrayList<>();
    private Map<String, UUID> uuidByPath = Map.of();
    private Map<String, UUID> lastKnown = Map.of();
    private boolean opened;
    private Optional<String> odd = Optional.empty();
    private volatile boolean takesBattery;
    private volatile boolean closed;
    private volatile long lastTurnNanos;
    private volatile long lastOtherNanos;
    private volatile long turnFrames;

    /** For a device; {@code spare} names the characteristics that tell no turn. */
    FrameTap(String devicePath, Set<UUID> spare, MonotonicClock clock, CaptureIntake intake, LinkWatch watch) {
        this.devicePath = devicePath;
        this.spare = Set.copyOf(spare);
        this.clock = clock;
        this.intake = intake;
        this.watch = watch;
        this.lastTurnNanos = clock.nanos();
        this.lastOtherNanos = lastTurnNanos;
    }

    /**
     * From now on values of these characteristics are frames, and those that came since the tap was made or put to
     * rest; {@code takesServiceBattery}: from now on the service's own battery reading too.
     */
    synchronized void open(Map<String, UUID> characteristics, boolean takesServiceBattery) {
        uuidByPath = Map.copyOf(characteristics);
        takesBattery = takesServiceBattery;
        opened = true;
        odd = Optional.empty();
        lastTurnNanos = clock.nanos();
        early.forEach(each -> takeNotified(each.path(), each.arrivalNanos(), Optional.of(each.bytes())));
        early.clear();
    }

    /** From now on what comes waits for the next opening. */
    synchronized void rest() {
        lastKnown = opened ? uuidByPath : lastKnown;
        opened = false;
        uuidByPath = Map.of();
        takesBattery = false;
    }

    /** Takes nothing more. What still waits is of the characteristics that it was opened with last. */
    synchronized void close() {
        closed = true;
        uuidByPath = opened ? uuidByPath : lastKnown;
        early.forEach(each -> takeNotified(each.path(), each.arrivalNanos(), Optional.of(each.bytes())));
        early.clear();
        uuidByPath = Map.of();
    }

    /** When a value last came that may tell a turn, on the capture's clock; at the latest when it was opened. */
    long lastTurnNanos() {
        return lastTurnNanos;
    }

    /** When a value last came that tells no turn. */
    long lastOtherNanos() {
        return lastOtherNanos;
    }

    /** How many values came that may tell a turn. */
    long turnFrames() {
        return turnFrames;
    }

    /** What a wanted characteristic notified that is no value, once for each opening. */
    synchronized Optional<String> takeOdd() {
        Optional<String> said = odd.filter(text -> !text.isEmpty());
        odd = odd.map(text -> "");
        return said;
    }

    @Override
    public void handle(DBusSignal signal) {
        long arrivalNanos = clock.nanos();
        if (closed || !(BusSignal.read(signal).orElse(null) instanceof BusSignal.Changed changed)) {
            return;
        }
        switch (changed.interfaceName()) {
            case BluezBus.CHARACTERISTIC -> {
                if (changed.properties().containsKey("Value")) {
                    Object value = changed.properties().get("Value");
                    noteOdd(changed.path(), value);
                    takeNotified(changed.path(), arrivalNanos, BusValue.bytes(value));
                }
            }
            case BluezBus.BATTERY -> {
                if (takesBattery) {
                    BusValue.number(changed.properties().get("Percentage"))
                            .ifPresent(percent ->
                                    take(CaptureTarget.BATTERY_LEVEL, arrivalNanos, new byte[] {(byte) percent}));
                }
            }
            case BluezBus.DEVICE -> tellWatch(changed.path(), changed.properties());
            default -> {
                // Other interfaces of the device say nothing about turns.
            }
        }
    }

    private synchronized void noteOdd(String path, Object value) {
        if (odd.isEmpty()
                && uuidByPath.containsKey(path)
                && BusValue.bytes(value).isEmpty()) {
            odd = Optional.of(uuidByPath.get(path) + " notified " + BusValue.inWords(value));
        }
    }

    private synchronized void takeNotified(String path, long arrivalNanos, Optional<byte[]> value) {
        UUID uuid = uuidByPath.get(path);
        if (value.isEmpty()) {
            return;
        }
        if (uuid != null) {
            count(uuid, arrivalNanos);
            take(uuid, arrivalNanos, value.get());
        } else if (!opened && !closed && early.size() < MOST_EARLY) {
            early.add(new Early(path, arrivalNanos, value.get()));
        }
    }

    /** Only ever called under the lock. */
    private void count(UUID uuid, long arrivalNanos) {
        if (spare.contains(uuid)) {
            lastOtherNanos = arrivalNanos;
        } else {
            lastTurnNanos = Math.max(lastTurnNanos, arrivalNanos);
            long counted = turnFrames + 1;
            turnFrames = counted;
        }
    }

    private void tellWatch(String path, Map<String, Object> changed) {
        if (!path.equals(devicePath)) {
            return;
        }
        BusValue.flag(changed.get("ServicesResolved"))
                .ifPresent(resolved -> watch.deviceResolved(devicePath, resolved));
        BusValue.flag(changed.get("Connected")).ifPresent(connected -> watch.deviceConnected(devicePath, connected));
    }

    /** Takes a value, from a signal or from a read. */
    void take(UUID uuid, long arrivalNanos, byte[] value) {
        intake.frame(uuid.toString(), arrivalNanos, value);
    }
}
