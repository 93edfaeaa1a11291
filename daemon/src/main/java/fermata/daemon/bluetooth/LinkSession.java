package fermata.daemon.bluetooth;

import fermata.daemon.bluetooth.ObjectSnapshot.Device;
import fermata.daemon.capture.CaptureIntake;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LinkFault;
import fermata.daemon.capture.LossReason;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.stream.profile.StreamProfile.Write;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
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

    private final BluezBus bus;
    private final Device device;
    private final CaptureTarget target;
    private final CentralSettings settings;
    private final LinkWatch watch;
    private final CaptureIntake intake;
    private final MonotonicClock clock;
    private final FrameTap tap;
    private final Subscription handler;

    private Map<UUID, String> paths = Map.of();
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
        this.watch = around.watch();
        this.intake = around.intake();
        this.clock = around.clock();
        this.tap = new FrameTap(device.path(), clock, intake, watch);
        watch.watch(device.path(), owner);
        this.handler = bus.followDevice(owner, device.path(), tap);
    }

    /** What a session shares with the whole capture. */
    record Surroundings(LinkWatch watch, CaptureIntake intake, MonotonicClock clock) {}

    /** Brings the link up; decided by the property, not by the answer, which may fail or be lost either way. */
    void connect() {
        if (watch.isOver()) {
            throw new LinkException(LinkFault.RETRY_FAST, "the service that knew the device went before the attempt");
        }
        if (!device.connected()) {
            MethodCall call = bus.send(device.path(), BluezBus.DEVICE, "Connect", "");
            // Not cut short by the link falling again: the answer that follows says why it fell.
            bus.awaitAnswer(call, settings.connectLimit(), watch::isServiceGone);
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
        if (readFlag("ServicesResolved")) {
            watch.deviceResolved(device.path(), true);
        }
        watch.await(() -> watch.isResolved() || watch.isOver(), settings.resolveLimit());
        if (!watch.isResolved() || watch.isOver()) {
            throw new LinkException(LinkFault.RETRY_FAST, "the services of " + device.address() + " were not resolved");
        }
        paths = awaitCharacteristics();
        intake.link(clock.nanos(), new LinkChange.Resolved(mtuBytes()));
        subscribe();
        for (Write each : target.onConnect()) {
            write(each);
        }
        readAll();
        delivered = true;
    }

    private Map<UUID, String> awaitCharacteristics() {
        while (true) {
            long changes = watch.treeChanges();
            Map<UUID, String> found = bus.objects().characteristics(device.path());
            if (found.keySet().containsAll(target.required())) {
                return found;
            }
            boolean more = watch.await(() -> watch.treeChanges() != changes || watch.isOver(), settings.resolveLimit());
            if (!more || watch.isOver()) {
                Set<UUID> missing = new java.util.LinkedHashSet<>(target.required());
                missing.removeAll(found.keySet());
                throw new LinkException(
                        LinkFault.RETRY_FAST, "the services of " + device.address() + " lack " + missing);
            }
        }
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
        for (Map.Entry<String, UUID> each : heard.entrySet()) {
            startNotify(each.getKey(), each.getValue());
        }
        intake.link(
                clock.nanos(),
                new LinkChange.Subscribed(
                        heard.values().stream().map(UUID::toString).collect(Collectors.toList())));
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

    /** Reads what is to be read; each answer goes to the journal as a frame. Throws when the device does not answer. */
    void readAll() {
        for (UUID uuid : target.read()) {
            if (uuid.equals(CaptureTarget.BATTERY_LEVEL)) {
                readBattery();
            } else {
                read(uuid);
            }
        }
    }

    private void read(UUID uuid) {
        Object value =
                bus.call(paths.get(uuid), BluezBus.CHARACTERISTIC, "ReadValue", "a{sv}", BluezBus.noOptions())[0];
        tap.take(uuid, clock.nanos(), value);
    }

    private void readBattery() {
        bus.objects()
                .battery(device.path())
                .ifPresentOrElse(
                        percent -> tap.take(CaptureTarget.BATTERY_LEVEL, clock.nanos(), percent), this::tryReadBattery);
    }

    private void tryReadBattery() {
        if (!paths.containsKey(CaptureTarget.BATTERY_LEVEL)) {
            return;
        }
        try {
            read(CaptureTarget.BATTERY_LEVEL);
        } catch (LinkException e) {
            if (watch.isOver()) {
                throw e;
            }
        }
    }

    /**
     * Whether anything answers on a link that has been silent; reads what there is to read, else the link's own
     * property.
     */
    void provePresence() {
        if (target.read().isEmpty()) {
            if (!readFlag("Connected")) {
                throw new LinkException(LinkFault.RETRY_FAST, "the link went without a signal");
            }
        } else {
            readAll();
        }
    }

    /** When the last frame came, on the capture's clock. */
    long lastFrameNanos() {
        return tap.lastFrameNanos();
    }

    /** Whether the set-up was completed. */
    boolean isDelivering() {
        return delivered;
    }

    private boolean readFlag(String name) {
        return Boolean.TRUE.equals(bus.property(device.path(), BluezBus.DEVICE, name));
    }

    /** Forgets the device in the service, with whatever it has cached of it. */
    void forgetDevice(String adapterPath) {
        bus.send(adapterPath, BluezBus.ADAPTER, "RemoveDevice", "o", new org.freedesktop.dbus.DBusPath(device.path()));
    }

    /** Hangs up where there is something to hang up, takes what was said until then, and ends the connection. */
    void end(LossReason reason, String detail) {
        try {
            if (reason != LossReason.LINK_DOWN && reason != LossReason.OBJECT_REMOVED) {
                hangUp();
            }
        } finally {
            tap.close();
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
        tap.close();
        watch.forgetDevice();
        handler.close();
    }
}
