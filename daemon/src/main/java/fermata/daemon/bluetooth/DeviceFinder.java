package fermata.daemon.bluetooth;

import fermata.daemon.bluetooth.ObjectSnapshot.Adapter;
import fermata.daemon.bluetooth.ObjectSnapshot.Device;
import fermata.daemon.capture.LinkFault;
import fermata.daemon.time.Deadline;
import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.freedesktop.dbus.messages.MethodCall;
import org.freedesktop.dbus.types.Variant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Finds the wanted device: one that is linked already, else one that a scan hears. Owned by the central's thread.
 *
 * <p>The scan is still running when a device is returned, because an unconnected device is forgotten when its scan
 * ends; whoever connects to it closes the scan afterwards.
 */
final class DeviceFinder {
    private static final Logger LOG = LoggerFactory.getLogger(DeviceFinder.class);
    private static final Duration LOOK_AGAIN = Duration.ofMillis(500);
    /** BlueZ takes its name on the bus before it has its adapters: 1.5 s before on an emulated board. */
    private static final Duration ADAPTERS_APPEAR = Duration.ofSeconds(10);
    /** A scan shows a moment after it was started; on BlueZ 5.66 it then shows without a break. */
    private static final Duration SCAN_LAPSE = Duration.ofSeconds(3);

    /** The tree is read for a twentieth of the time at most, which among hundreds of neighbours is not at once. */
    private static final int PAUSE_FOR_READING = 20;
    /** Below {@link #SCAN_LAPSE}, so that a lapse is still seen. */
    private static final Duration LOOK_RARELY = Duration.ofMillis(2500);

    private static final Duration OWNER_CHECK = Duration.ofSeconds(5);
    private static final Duration NOT_SEEN_REPORT = Duration.ofMinutes(1);

    private final CaptureTarget target;
    private final CentralSettings settings;
    private final LinkWatch watch;
    private final MonotonicClock clock;
    private final Consumer<String> status;

    DeviceFinder(
            CaptureTarget target,
            CentralSettings settings,
            LinkWatch watch,
            MonotonicClock clock,
            Consumer<String> status) {
        this.target = target;
        this.settings = settings;
        this.watch = watch;
        this.clock = clock;
        this.status = status;
    }

    /** A running scan. */
    interface Scan extends AutoCloseable {
        @Override
        void close();
    }

    /** A device and the scan that found it; a scan that does nothing where none was needed. */
    record Found(Device device, Adapter adapter, Scan scan) {}

    /** Empty when the capture was stopped or the service went meanwhile. */
    Optional<Found> find(BluezBus bus) {
        Optional<Adapter> present = awaitAdapter(bus);
        if (present.isEmpty()) {
            return Optional.empty();
        }
        Adapter adapter = present.get();
        ObjectSnapshot objects = bus.objects();
        Optional<Device> linked =
                fitting(objects, adapter).stream().filter(Device::connected).findFirst();
        if (linked.isPresent()) {
            return Optional.of(new Found(linked.get(), adapter, () -> {}));
        }
        powerOn(bus, adapter);
        Scan scan = startScan(bus, adapter);
        Optional<Device> heard = Optional.empty();
        try {
            heard = listen(bus, adapter);
            return heard.map(device -> new Found(device, adapter, scan));
        } finally {
            if (heard.isEmpty()) {
                scan.close();
            }
        }
    }

    /** Empty when the capture was stopped or the service went meanwhile. */
    private Optional<Adapter> awaitAdapter(BluezBus bus) {
        long generation = watch.generation();
        Deadline deadline = watch.patience(ADAPTERS_APPEAR);
        while (isServed(generation)) {
            Optional<Adapter> adapter = adapter(bus.objects());
            if (adapter.isPresent()) {
                return adapter;
            }
            if (deadline.hasPassed()) {
                throw new LinkException(
                        LinkFault.ASK_HUMAN,
                        "no Bluetooth adapter"
                                + settings.adapterAddress()
                                        .map(" with address "::concat)
                                        .orElse("") + ": plug one in, or see what \"rfkill list\" says");
            }
            watch.pause(watch::isOverForAll, LOOK_AGAIN);
        }
        return Optional.empty();
    }

    /** The adapter that is used: the one that was named, or else one that is on before one that is not. */
    Optional<Adapter> adapter(ObjectSnapshot objects) {
        return objects.adapters().stream()
                .filter(each -> settings.adapterAddress()
                        .map(each.address()::equalsIgnoreCase)
                        .orElse(true))
                .min(Comparator.comparing(each -> !each.powered()));
    }

    private List<Device> fitting(ObjectSnapshot objects, Adapter adapter) {
        return objects.devices(adapter.path()).stream().filter(this::fits).toList();
    }

    /** Whether an object that came may be the device or the adapter that is waited for. */
    boolean concerns(BusSignal.Added added) {
        Map<String, Object> device = added.interfaces().get(BluezBus.DEVICE);
        return added.interfaces().containsKey(BluezBus.ADAPTER)
                || device != null && fits(ObjectSnapshot.device(added.path(), device));
    }

    private boolean fits(Device device) {
        return target.fits(device.name(), device.services());
    }

    private static void powerOn(BluezBus bus, Adapter adapter) {
        if (!adapter.powered()) {
            bus.setProperty(adapter.path(), BluezBus.ADAPTER, "Powered", new Variant<>(true));
        }
    }

    private Scan startScan(BluezBus bus, Adapter adapter) {
        Map<String, Variant<?>> filter = new HashMap<>();
        filter.put("Transport", new Variant<>("le"));
        filter.put("DuplicateData", new Variant<>(false));
        target.service().ifPresent(uuid -> filter.put("UUIDs", new Variant<>(List.of(uuid.toString()), "as")));
        bus.call(adapter.path(), BluezBus.ADAPTER, "SetDiscoveryFilter", "a{sv}", filter);
        bus.call(adapter.path(), BluezBus.ADAPTER, "StartDiscovery", "");
        return () -> {
            if (!watch.isBusLost()) {
                // Unanswered on purpose: an adapter that went has nothing to stop.
                bus.send(adapter.path(), BluezBus.ADAPTER, "StopDiscovery", "");
            }
        };
    }

    private Optional<Device> listen(BluezBus bus, Adapter adapter) {
        long generation = watch.generation();
        long sinceNanos = clock.nanos();
        ScanWatchdog watchdog = new ScanWatchdog(sinceNanos);
        Deadline showsBy = watch.patience(SCAN_LAPSE);
        long ownerDue = sinceNanos + OWNER_CHECK.toNanos();
        while (isServed(generation)) {
            long changes = watch.treeChanges();
            long lookedAt = clock.nanos();
            ObjectSnapshot objects = bus.objects();
            long readFor = clock.nanos() - lookedAt;
            Optional<Device> heard = fitting(objects, adapter).stream()
                    .filter(device -> device.inRange() || device.connected())
                    .findFirst();
            if (heard.isPresent()) {
                return heard;
            }
            showsBy = objects.isScanning(adapter.path()) ? watch.patience(SCAN_LAPSE) : showsBy;
            if (showsBy.hasPassed()) {
                // BlueZ ends the scans of an adapter that goes off, tells nobody, and resumes none when it is on again.
                throw new LinkException(LinkFault.RETRY_SLOW, "the scan ended: the adapter was switched off or went");
            }
            listenAnewIfDeaf(bus, adapter, objects, watchdog);
            report(Duration.ofNanos(clock.nanos() - sinceNanos), watchdog.restarts());
            watch.pause(() -> watch.treeChanges() != changes || watch.isOverForAll(), untilNextLook(readFor));
            if (clock.nanos() - ownerDue >= 0) {
                bus.verifyOwner();
                ownerDue = clock.nanos() + OWNER_CHECK.toNanos();
            }
        }
        return Optional.empty();
    }

    private static Duration untilNextLook(long readForNanos) {
        long nanos = Math.max(LOOK_AGAIN.toNanos(), PAUSE_FOR_READING * readForNanos);
        return Duration.ofNanos(Math.min(LOOK_RARELY.toNanos(), nanos));
    }

    private void listenAnewIfDeaf(BluezBus bus, Adapter adapter, ObjectSnapshot objects, ScanWatchdog watchdog) {
        long now = clock.nanos();
        boolean hears = objects.devices(adapter.path()).stream().anyMatch(Device::inRange);
        // A scan that lapsed is another fault, and looked after by others.
        if (hears || !objects.isScanning(adapter.path())) {
            watchdog.heard(now);
        } else if (watchdog.isDue(now)) {
            LOG.info("the scan has heard no device at all and is begun anew");
            MethodCall stop = bus.send(adapter.path(), BluezBus.ADAPTER, "StopDiscovery", "");
            // Refused where the scan is gone already, which is as good.
            bus.awaitAnswer(stop, settings.callLimit(), watch::isServiceGone);
            bus.call(adapter.path(), BluezBus.ADAPTER, "StartDiscovery", "");
            watchdog.restarted(clock.nanos());
        }
    }

    /** Whether this life of the service goes on, and anybody wants it to. */
    private boolean isServed(long generation) {
        return !watch.isOverForAll() && watch.owner().isPresent() && watch.generation() == generation;
    }

    private void report(Duration listened, int restarts) {
        String wanted = "looking for a device " + target.inWords();
        status.accept(
                listened.compareTo(NOT_SEEN_REPORT) < 0
                        ? wanted
                        : wanted + ": not seen for " + listened.toMinutes() + " min"
                                + (restarts == 0 ? "" : ", nor any other; scan begun anew " + times(restarts))
                                + "; turn a face to wake it, and see whether a phone holds it");
    }

    private static String times(int count) {
        return count == 1 ? "once" : count + " times";
    }
}
