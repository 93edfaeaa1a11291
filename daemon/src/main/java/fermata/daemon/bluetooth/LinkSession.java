package fermata.daemon.bluetooth;

import fermata.daemon.bluetooth.ObjectSnapshot.Device;
import fermata.daemon.capture.CaptureIntake;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LinkFault;
import fermata.daemon.capture.LossReason;
import fermata.daemon.time.Deadline;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.profile.StreamProfile.Write;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.messages.MethodCall;
import org.freedesktop.dbus.types.Variant;

/**
 * One connection from the first attempt to the last signal. Owned by the central's thread, save {@link FrameTap}.
 *
 * <p>Order, each for a reason: the handler is there before the link is, so that no property is missed; properties are
 * read after that, because a link that was up gives no signal; the frame handler knows its characteristics before they
 * are subscribed to, because the first value may come before the answer; the state is read last, so that whatever was
 * missed before shows in it.
 */
final class LinkSession implements AutoCloseable {
    /** Longest wait for the signal that the link went, after the answer that it did. */
    private static final Duration FAREWELL = Duration.ofSeconds(2);
    /** Longest wait for the answer to Connect once the link stands: BlueZ 5.66 gives it in the same moment. */
    private static final Duration ANSWER_AFTER_LINK = Duration.ofSeconds(2);
    /** How often facts are looked up whose signals may have been lost. */
    private static final Duration LOOK_AGAIN = Duration.ofSeconds(2);

    private final BluezBus bus;
    private final Device device;
    private final CaptureTarget target;
    private final CentralSettings settings;
    private final Surroundings around;
    private final LinkWatch watch;
    private final CaptureIntake intake;
    private final MonotonicClock clock;
    private final FrameTap tap;

    private Map<UUID, String> paths = Map.of();
    private DeviceReads reads;
    private HostCheck host;
    private boolean begun;
    private boolean delivered;
    private boolean hungUp;

    LinkSession(
            BluezBus bus,
            String owner,
            Device device,
            CaptureTarget target,
            CentralSettings settings,
            Surroundings around) {
        this.bus = bus;
        this.device = device;
        this.target = target;
        this.settings = settings;
        this.around = around;
        this.watch = around.watch();
        this.intake = around.intake();
        this.clock = around.clock();
        watch.watch(device.path(), owner);
        this.tap = around.taps().of(bus, owner, device.path());
    }

    /** What a session shares with the whole capture. */
    record Surroundings(LinkWatch watch, CaptureIntake intake, MonotonicClock clock, KeptTap taps) {
        /** Writes down that something was refused, or was not what it should be. */
        void refused(LinkFault fault, String why) {
            intake.link(clock.nanos(), new LinkChange.Refused(fault, String.valueOf(why)));
        }
    }

    /** Brings the link up; decided by the property, not by the answer, which may fail or be lost either way. */
    void connect() {
        if (watch.isOver()) {
            throw new LinkException(LinkFault.RETRY_FAST, "the service that knew the device went before the attempt");
        }
        if (!device.connected()) {
            MethodCall call = bus.send(device.path(), BluezBus.DEVICE, "Connect", "");
            bus.awaitAnswer(
                    call,
                    settings.connectLimit(),
                    () -> watch.isServiceGone() || watch.isOver() || watch.isConnected());
            // Not cut short by the link falling again: the answer that follows says why it fell. It may be lost, too.
            bus.awaitAnswer(call, ANSWER_AFTER_LINK, watch::isServiceGone);
            if (!readFlag("Connected")) {
                bus.answer(call, "Connect to " + device.path());
                throw new LinkException(LinkFault.RETRY_FAST, "Connect was answered, but there is no link");
            }
        }
        watch.deviceConnected(device.path(), readFlag("Connected"));
        if (!watch.isConnected()) {
            throw new LinkException(LinkFault.RETRY_FAST, "the link that was up is gone");
        }
        intake.connected(clock.nanos(), new LinkChange.Connected(device.address(), device.connected()));
        begun = true;
    }

    /** Waits for the services, subscribes, writes and reads. When it returns frames flow. */
    void setUp() {
        awaitResolved();
        paths = awaitCharacteristics();
        reads = new DeviceReads(bus, device, target, paths, tap, around);
        intake.link(clock.nanos(), new LinkChange.Resolved(mtuBytes()));
        subscribe();
        for (Write each : target.onConnect()) {
            write(each);
        }
        delivered = true;
        reads.tryAll();
    }

    private void awaitResolved() {
        Deadline deadline = watch.patience(settings.resolveLimit());
        while (!watch.isResolved() && !watch.isOver() && !deadline.hasPassed()) {
            if (readFlag("ServicesResolved")) {
                watch.deviceResolved(device.path(), true);
            } else {
                watch.await(() -> watch.isResolved() || watch.isOver(), shorter(settings.resolveLimit(), LOOK_AGAIN));
            }
        }
        if (!watch.isResolved() || watch.isOver()) {
            throw new LinkException(LinkFault.RETRY_FAST, "the services of " + device.address() + " were not resolved");
        }
    }

    private Map<UUID, String> awaitCharacteristics() {
        Deadline deadline = watch.patience(settings.resolveLimit());
        while (true) {
            long changes = watch.treeChanges();
            Map<UUID, String> found = bus.objects().characteristics(device.path());
            if (found.keySet().containsAll(target.required())) {
                return found;
            }
            if (deadline.hasPassed() || watch.isOver()) {
                Set<UUID> missing = new LinkedHashSet<>(target.required());
                missing.removeAll(found.keySet());
                throw new LinkException(
                        LinkFault.RETRY_FAST, "the services of " + device.address() + " lack " + missing);
            }
            watch.await(
                    () -> watch.treeChanges() != changes || watch.isOver(),
                    shorter(settings.resolveLimit(), LOOK_AGAIN));
        }
    }

    private static Duration shorter(Duration a, Duration b) {
        return a.compareTo(b) < 0 ? a : b;
    }

    private int mtuBytes() {
        ObjectSnapshot objects = bus.objects();
        return target.subscribe().stream()
                .filter(paths::containsKey)
                .flatMapToInt(uuid -> objects.mtuBytes(paths.get(uuid)).stream())
                .findFirst()
                .orElse(LinkChange.Resolved.UNKNOWN_MTU);
    }

    private void subscribe() {
        boolean serviceReadsBattery = bus.objects().battery(device.path()).isPresent();
        Map<String, UUID> heard = new LinkedHashMap<>();
        for (UUID uuid : target.subscribe()) {
            boolean throughBattery = uuid.equals(CaptureTarget.BATTERY_LEVEL) && serviceReadsBattery;
            if (paths.containsKey(uuid) && !throughBattery) {
                heard.put(paths.get(uuid), uuid);
            }
        }
        watch.watchCharacteristics(heard.keySet());
        tap.open(heard, target.wantsBattery() && serviceReadsBattery);
        host = new HostCheck(bus, device.path(), pathsThatMustSpeak(heard), tap, around);
        for (Map.Entry<String, UUID> each : heard.entrySet()) {
            startNotify(each.getKey(), each.getValue());
        }
        intake.link(
                clock.nanos(),
                new LinkChange.Subscribed(
                        heard.values().stream().map(UUID::toString).collect(Collectors.toList())));
    }

    private List<String> pathsThatMustSpeak(Map<String, UUID> heard) {
        return heard.keySet().stream()
                .filter(path -> !target.spare().contains(heard.get(path)))
                .toList();
    }

    private void startNotify(String path, UUID uuid) {
        try {
            bus.call(path, BluezBus.CHARACTERISTIC, "StartNotify", "");
        } catch (LinkException e) {
            // Some devices and services keep the battery to themselves; turns are worth having without it.
            if (!target.spare().contains(uuid) || watch.isOver()) {
                throw e;
            }
        }
    }

    /** Writes to a characteristic. */
    void write(Write write) {
        Map<String, Variant<?>> options = Map.of("type", new Variant<>(write.withResponse() ? "request" : "command"));
        bus.call(
                paths.get(write.characteristic()),
                BluezBus.CHARACTERISTIC,
                "WriteValue",
                "aya{sv}",
                write.bytes(),
                options);
    }

    /**
     * Whether anything answers on a link that has been silent; reads what there is to read, else the link's own
     * property. Throws when nobody does, or when the device was turned without having said so.
     */
    void provePresence() {
        if (reads.work()) {
            reads.all();
        } else if (!readFlag("Connected")) {
            throw new LinkException(LinkFault.RETRY_FAST, "the link went without a signal");
        } else {
            reads.tryAll();
        }
    }

    /** Asks bus and service whether what the link stands on is there. */
    void checkHost() {
        host.run();
    }

    /** When a value last came that may tell a turn, on the capture's clock. */
    long lastTurnNanos() {
        return tap.lastTurnNanos();
    }

    /** When a value last came that tells no turn. */
    long lastOtherNanos() {
        return tap.lastOtherNanos();
    }

    /** Whether the set-up was completed. */
    boolean isDelivering() {
        return delivered;
    }

    private boolean readFlag(String name) {
        Object value = bus.property(device.path(), BluezBus.DEVICE, name);
        return BusValue.flag(value).orElseThrow(() -> FaultTable.odd(name + " is " + BusValue.inWords(value)));
    }

    /**
     * Forgets the device in the service, with whatever it has cached of it, unless that would cost its owner a bond:
     * then it says what to do.
     */
    void forgetDevice(String adapterPath) {
        if (bus.objects().device(device.path()).map(Device::bonded).orElse(true)) {
            around.refused(
                    LinkFault.ASK_HUMAN,
                    device.address() + " cannot be set up, and is paired with this board: if it was reset, let"
                            + " \"bluetoothctl remove " + device.address() + "\" forget it, and pair it anew");
            return;
        }
        bus.send(adapterPath, BluezBus.ADAPTER, "RemoveDevice", "o", new DBusPath(device.path()));
    }

    /** Hangs up where there is something to hang up, takes what was said until then, and ends the connection. */
    void end(LossReason reason, String detail) {
        try {
            if (reason != LossReason.LINK_DOWN && reason != LossReason.OBJECT_REMOVED) {
                hangUp();
            }
        } finally {
            tap.rest();
            if (begun) {
                begun = false;
                intake.link(clock.nanos(), new LinkChange.Lost(reason, detail));
            }
        }
    }

    /**
     * Hangs up once, which also cancels an attempt that still hangs in the service, and waits until the signals have
     * told the end: an answer overtakes the signals that were sent before it.
     */
    void hangUp() {
        if (hungUp || watch.isBusLost() || watch.owner().isEmpty()) {
            return;
        }
        hungUp = true;
        MethodCall call = bus.send(device.path(), BluezBus.DEVICE, "Disconnect", "");
        bus.awaitAnswer(call, settings.callLimit(), watch::isBusLost);
        watch.await(() -> !watch.isConnected() || watch.loss().isPresent(), FAREWELL);
    }

    @Override
    public void close() {
        tap.rest();
        watch.forgetDevice();
    }
}
