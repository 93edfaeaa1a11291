package fermata.daemon.virtualcube;

import static fermata.daemon.virtualcube.TreeOnBus.onBus;

import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.freedesktop.dbus.types.Variant;

/**
 * An {@code org.bluez} with one adapter and one peripheral in reach, on any bus.
 *
 * <p>Discovery makes the device appear, a connection shows {@code Connected}, then the GATT objects, then {@code
 * ServicesResolved}; notifications are {@code PropertiesChanged} of {@code Value}; a lost link shows {@code
 * ServicesResolved} and {@code Connected} falling, and a link that comes again finds its objects at new paths. A
 * {@linkplain #restart restart} shows nothing but the name going and coming. Delays run on the injected clock. Safe
 * for use by many threads.
 */
public final class VirtualBluez implements AutoCloseable {
    private static final Duration ADVERTISING_EVERY = Duration.ofMillis(150);
    private static final short NEARBY_DBM = -55;
    private static final Duration LINK_SET_UP = Duration.ofMillis(120);
    private static final Duration RESOLVING = Duration.ofMillis(400);

    private final String address;
    private final MonotonicClock clock;
    private final Peripheral peripheral;
    private final BluezTemper temper;
    private final GattObjects gatt;
    private final ScheduledExecutorService later = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "virtual-bluez");
        thread.setDaemon(true);
        return thread;
    });

    private TreeOnBus tree;
    private AdapterObject adapter;
    private Optional<DeviceObject> device = Optional.empty();
    private boolean advertising = true;
    private long life;
    private int links;
    private int plugged;
    private int scansStarted;
    private int removals;
    private Map<String, Variant<?>> discoveryFilter = Map.of();

    private VirtualBluez(String address, MonotonicClock clock, Peripheral peripheral, BluezTemper temper) {
        this.address = address;
        this.clock = clock;
        this.peripheral = peripheral;
        this.temper = temper;
        this.gatt = new GattObjects(this, peripheral, temper);
    }

    /**
     * Puts the service on a bus.
     *
     * @param address D-Bus address of the bus
     * @param temper its misbehaviours
     */
    public static VirtualBluez start(String address, MonotonicClock clock, Peripheral peripheral, BluezTemper temper) {
        VirtualBluez bluez = new VirtualBluez(address, clock, peripheral, temper);
        bluez.comeUp();
        return bluez;
    }

    synchronized void comeUp() {
        onBus(() -> {
            tree = new TreeOnBus(address);
            adapter = new AdapterObject(this, BluezNames.ADAPTER_PATH + plugged);
            if (temper.adapterAfterName().isZero()) {
                tree.add(adapter);
            }
            tree.publish();
        });
        after(temper.adapterAfterName(), () -> onBus(() -> tree.add(adapter)));
    }

    /**
     * Kills the service and starts it again after {@code absent}: the link and every object are gone, without a signal
     * for them.
     */
    public void restart(Duration absent) {
        die().close();
        after(absent, this::comeUp);
    }

    synchronized TreeOnBus die() {
        life++;
        device = Optional.empty();
        gatt.vanish();
        return tree;
    }

    /** Sends a value of a characteristic; false when nobody is subscribed to it on a living link. */
    public boolean send(UUID characteristic, byte[] value) {
        return gatt.send(characteristic, value);
    }

    /** Whether somebody is subscribed to the characteristic on a living link. */
    public boolean isNotifying(UUID characteristic) {
        return gatt.isNotifying(characteristic);
    }

    /** Whether the cube has a link. */
    public synchronized boolean isConnected() {
        return device.map(d -> d.isTrue(BluezNames.DEVICE, "Connected")).orElse(false);
    }

    /** Cuts the link, as when the cube leaves the room; it can be found again after {@code outage}. */
    public synchronized void dropLink(Duration outage) {
        advertising = false;
        endLink();
        after(outage, () -> advertising = true);
    }

    /**
     * Brings the device and its link up without anybody's asking, as a client that has died since would have left it.
     */
    public synchronized void bringUp() {
        DeviceObject found = new DeviceObject(this, peripheral, adapter.getObjectPath());
        device = Optional.of(found);
        links++;
        onBus(() -> tree.add(found));
        change(found, BluezNames.DEVICE, "Connected", true);
        resolve(found);
    }

    /**
     * Lets the GATT objects vanish and come back elsewhere while the link stays, as when the peripheral's firmware
     * restarts.
     */
    public synchronized void moveServices(Duration absent) {
        device.ifPresent(d -> {
            gatt.remove(d);
            after(absent, () -> exportServices(d));
        });
    }

    /** Says that interfaces of some object went. */
    public synchronized void announceRemoval(String path, List<String> interfaces) {
        onBus(() -> tree.announceRemoval(path, interfaces));
    }

    /** How often a scan was started, and links came up. */
    public synchronized List<Integer> scansAndLinks() {
        return List.of(scansStarted, links);
    }

    /** How often a client had the device forgotten. */
    public synchronized int removals() {
        return removals;
    }

    /** What the last scan was told to look for. */
    public synchronized Map<String, Variant<?>> discoveryFilter() {
        return Map.copyOf(discoveryFilter);
    }

    synchronized void setDiscoveryFilter(Map<String, Variant<?>> filter) {
        discoveryFilter = Map.copyOf(filter);
    }

    synchronized void startDiscovery() {
        requirePower();
        if (adapter.isTrue(BluezNames.ADAPTER, "Discovering")) {
            throw new org.bluez.Error.InProgress("Operation already in progress");
        }
        scansStarted++;
        change(adapter, BluezNames.ADAPTER, "Discovering", true);
        int scan = temper.takesDeafScan() ? 0 : scansStarted;
        after(ADVERTISING_EVERY, () -> advertise(scan));
    }

    synchronized void stopDiscovery() {
        if (!adapter.isTrue(BluezNames.ADAPTER, "Discovering")) {
            throw new org.bluez.Error.Failed("No discovery started");
        }
        change(adapter, BluezNames.ADAPTER, "Discovering", false);
        device.ifPresent(d -> onBus(() -> tree.drop(d, BluezNames.DEVICE, "RSSI")));
        after(temper.forgetsAfterScan(), this::forgetUnconnected);
    }

    private void forgetUnconnected() {
        if (!isConnected() && !adapter.isTrue(BluezNames.ADAPTER, "Discovering")) {
            device.ifPresent(d -> removeDevice(d.getObjectPath()));
        }
    }

    /** One advertisement, and the next while the scan that hears it goes on. */
    private void advertise(int scan) {
        if (scan != scansStarted || !adapter.isTrue(BluezNames.ADAPTER, "Discovering")) {
            return;
        }
        if (advertising && !isConnected()) {
            DeviceObject seen = device.orElseGet(() -> new DeviceObject(this, peripheral, adapter.getObjectPath()));
            if (device.isEmpty()) {
                device = Optional.of(seen);
                onBus(() -> tree.add(seen));
            }
            onBus(() -> tree.change(seen, BluezNames.DEVICE, "RSSI", new Variant<>(NEARBY_DBM)));
        }
        after(ADVERTISING_EVERY, () -> advertise(scan));
    }

    synchronized void forget(String path) {
        removals++;
        removeDevice(path);
    }

    private void removeDevice(String path) {
        DeviceObject known = device.filter(d -> d.getObjectPath().equals(path))
                .orElseThrow(() -> new org.bluez.Error.DoesNotExist("Does Not Exist"));
        endLink();
        device = Optional.empty();
        onBus(() -> tree.remove(known.getObjectPath()));
    }

    /** Switches the adapter, as a client, {@code rfkill} or its owner would. */
    public synchronized void setPowered(boolean powered) {
        if (!powered) {
            endLink();
            change(adapter, BluezNames.ADAPTER, "Discovering", false);
        }
        change(adapter, BluezNames.ADAPTER, "Powered", powered);
    }

    /** Pulls the adapter out, with the link in the middle of a word; it comes back under the next name. */
    public synchronized void unplug(Duration absent) {
        device = Optional.empty();
        gatt.vanish();
        onBus(() -> tree.remove(adapter.getObjectPath()));
        plugged++;
        adapter = new AdapterObject(this, BluezNames.ADAPTER_PATH + plugged);
        after(absent, () -> onBus(() -> tree.add(adapter)));
    }

    void connect() {
        synchronized (this) {
            requirePower();
            if (isConnected()) {
                throw new org.bluez.Error.AlreadyConnected("Already Connected");
            }
            if (temper.takesInProgress()) {
                throw new org.bluez.Error.InProgress("Operation already in progress");
            }
        }
        pause(LINK_SET_UP);
        synchronized (this) {
            DeviceObject found = device.filter(d -> advertising)
                    .orElseThrow(() -> new org.bluez.Error.Failed("le-connection-timeout"));
            change(found, BluezNames.DEVICE, "Connected", true);
            String failure = temper.nextConnectFailure();
            if (!failure.isEmpty()) {
                change(found, BluezNames.DEVICE, "Connected", false);
                throw new org.bluez.Error.Failed(failure);
            }
            links++;
            if (!temper.takesUnresolved()) {
                after(RESOLVING, () -> resolve(found));
            }
        }
    }

    private void resolve(DeviceObject found) {
        if (isConnected() && device.filter(found::equals).isPresent()) {
            if (!temper.takesWithoutObjects()) {
                exportServices(found);
            }
            change(found, BluezNames.DEVICE, "ServicesResolved", true);
        }
    }

    private void exportServices(DeviceObject found) {
        if (isConnected()) {
            gatt.export(found, links);
        }
    }

    synchronized void disconnect() {
        if (!isConnected()) {
            throw new org.bluez.Error.NotConnected("Not Connected");
        }
        endLink();
    }

    private void endLink() {
        if (isConnected()) {
            DeviceObject found = device.orElseThrow();
            change(found, BluezNames.DEVICE, "ServicesResolved", false);
            change(found, BluezNames.DEVICE, "Connected", false);
            gatt.remove(found);
        }
    }

    void change(TreeObject object, String interfaceName, String property, boolean value) {
        onBus(() -> tree.change(object, interfaceName, property, new Variant<>(value)));
    }

    /** What stands on the bus now; another one after a restart. */
    synchronized TreeOnBus tree() {
        return tree;
    }

    private void requirePower() {
        if (!adapter.isTrue(BluezNames.ADAPTER, "Powered")) {
            throw new org.bluez.Error.NotReady("Resource Not Ready");
        }
    }

    /** Refuses where there is no link. */
    void requireLink() {
        if (!isConnected()) {
            throw new org.bluez.Error.NotConnected("Not Connected");
        }
    }

    private void pause(Duration duration) {
        try {
            clock.sleep(duration);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Runs the task later under the lock, unless the service died in between. */
    private synchronized void after(Duration delay, Runnable task) {
        long born = life;
        Runnable guarded = () -> {
            synchronized (this) {
                if (born == life) {
                    task.run();
                }
            }
        };
        later.schedule(guarded, clock.machineNanos(delay), TimeUnit.NANOSECONDS);
    }

    @Override
    public void close() {
        later.shutdownNow();
        die().close();
    }
}
