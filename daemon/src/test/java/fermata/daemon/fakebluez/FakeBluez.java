package fermata.daemon.fakebluez;

import fermata.daemon.time.MonotonicClock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.random.RandomGenerator;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.messages.MethodCall;
import org.freedesktop.dbus.types.Variant;

/**
 * The service: one adapter, a cube that is turned all the time, neighbours, and answers that can be bent one by one.
 * Remembers what it notified on a living link. Guards itself; all tasks run by the injected clock.
 */
final class FakeBluez implements AutoCloseable {
    static final String NAME = "org.bluez";
    static final String PROPERTIES = "org.freedesktop.DBus.Properties";
    static final String OBJECT_MANAGER = "org.freedesktop.DBus.ObjectManager";
    private static final Duration TURN_EVERY = Duration.ofMillis(400);

    private final String address;
    private final MonotonicClock clock;
    private final RandomGenerator random;
    private final FakeCube cube;
    private final FakeTree tree = new FakeTree();
    private final List<Bend> bends = new ArrayList<>();
    private final List<Integer> told = new ArrayList<>();
    private final List<String> removals = new ArrayList<>();
    private final ScheduledExecutorService later = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread thread = new Thread(task, "fake-bluez");
        thread.setDaemon(true);
        return thread;
    });

    private Optional<RawPeer> peer = Optional.empty();
    private int treesRead;
    private boolean muted;
    private boolean halted;
    private long life;

    FakeBluez(String address, MonotonicClock clock, RandomGenerator random) {
        this.address = address;
        this.clock = clock;
        this.random = random;
        this.cube = new FakeCube(random);
        comeUp();
        after(TURN_EVERY, this::turn);
    }

    synchronized void bend(Bend bend) {
        bends.add(bend);
    }

    /** Takes back what has not been bent yet. */
    synchronized void straighten() {
        bends.clear();
    }

    synchronized void mute(boolean silent) {
        muted = silent;
    }

    synchronized FakeTree tree() {
        return tree;
    }

    /** The link goes; the cube is heard again after {@code outage}. */
    synchronized void dropLink(Duration outage) {
        tree.inRange = false;
        linkDown();
        after(outage, this::appearAgain);
    }

    /** The cube is out of reach, until it {@linkplain #appearAgain appears again}. */
    synchronized void hide() {
        tree.inRange = false;
        tree.known = false;
        linkDown();
    }

    synchronized void appearAgain() {
        tree.inRange = true;
        appear();
    }

    /** One more neighbour comes. */
    synchronized void addNeighbour() {
        added(tree.addNeighbour(random));
    }

    /** {@code Connected} falls and rises, and the cube goes on notifying. */
    synchronized void flap() {
        if (tree.connected) {
            show(tree.devicePath(), FakeTree.DEVICE, "Connected", false);
            tree.connected = false;
            after(Duration.ofMillis(1 + random.nextInt(20)), () -> {
                if (tree.known && tree.resolved) {
                    tree.connected = true;
                    show(tree.devicePath(), FakeTree.DEVICE, "Connected", true);
                }
            });
        }
    }

    /** The adapter goes, with or without a word, and comes back. */
    synchronized void vanish(Duration absent, boolean said) {
        String path = tree.adapterPath();
        List<String> gone = List.of(tree.devicePath(), path);
        tree.adapterThere = false;
        forgetLink();
        tree.known = false;
        if (said) {
            gone.forEach(each -> signal(
                    "/",
                    OBJECT_MANAGER,
                    "InterfacesRemoved",
                    "oas",
                    new DBusPath(each),
                    List.of(each.equals(path) ? FakeTree.ADAPTER : FakeTree.DEVICE)));
        }
        after(absent, () -> {
            tree.adapterNumber += random.nextInt(2);
            tree.adapterThere = true;
            tree.powered = random.nextBoolean();
            tree.discovering = false;
            added(tree.adapterPath());
        });
    }

    /** The service dies and starts again. */
    void restart(Duration absent) {
        RawPeer dying;
        synchronized (this) {
            life++;
            forgetLink();
            tree.known = false;
            tree.discovering = false;
            dying = peer.orElseThrow();
            peer = Optional.empty();
            after(absent, this::comeUpAgain);
        }
        dying.close();
    }

    /** As often as it takes: a machine that has no time for the bus is not what is tested. */
    private synchronized void comeUpAgain() {
        try {
            comeUp();
        } catch (RuntimeException e) {
            peer.ifPresent(RawPeer::close);
            peer = Optional.empty();
            after(Duration.ofMillis(400), this::comeUpAgain);
        }
    }

    private synchronized void comeUp() {
        RawPeer fresh = RawPeer.on(address, this::called);
        peer = Optional.of(fresh);
        fresh.own(NAME);
        tree.inRange = true;
    }

    synchronized void signal(String path, String interfaceName, String member, String signature, Object... values) {
        peer.ifPresent(each -> each.signal(path, interfaceName, member, signature, values));
    }

    synchronized void added(String path) {
        signal("/", OBJECT_MANAGER, "InterfacesAdded", "oa{sa{sv}}", new DBusPath(path), tree.object(path));
    }

    synchronized void show(String path, String interfaceName, String property, Object value) {
        Variant<?> shown = value instanceof Variant<?> given ? given : new Variant<>(value);
        signal(path, PROPERTIES, "PropertiesChanged", "sa{sv}as", interfaceName, Map.of(property, shown), List.of());
    }

    /** Numbers of the turns that were notified on a living link, in order. */
    synchronized List<Integer> told() {
        return List.copyOf(told);
    }

    synchronized int turned() {
        return cube.sequence();
    }

    /** How often the whole tree was asked for. */
    synchronized int treesRead() {
        return treesRead;
    }

    /** Which devices a client had removed. */
    synchronized List<String> removals() {
        return List.copyOf(removals);
    }

    /** Nobody turns the cube any more. */
    synchronized void halt() {
        halted = true;
    }

    private void turn() {
        if (halted) {
            return;
        }
        byte[] frame = cube.turn(clock.nanos() / 1_000_000);
        if (tree.notifying && tree.known && !muted && peer.isPresent()) {
            show(tree.turnsPath(), FakeTree.CHARACTERISTIC, "Value", new Variant<>(frame, "ay"));
            told.add(cube.sequence() & 0xFFFF);
        }
        after(TURN_EVERY.plusMillis(random.nextInt(100)), this::turn);
    }

    private void linkUp() {
        tree.connected = true;
        show(tree.devicePath(), FakeTree.DEVICE, "Connected", true);
        long born = life;
        after(Duration.ofMillis(300), () -> {
            if (tree.connected && tree.known && born == life) {
                tree.resolved = true;
                added(tree.turnsPath());
                added(tree.statePath());
                show(tree.devicePath(), FakeTree.DEVICE, "ServicesResolved", true);
            }
        });
    }

    void linkDown() {
        if (tree.connected) {
            show(tree.devicePath(), FakeTree.DEVICE, "ServicesResolved", false);
            show(tree.devicePath(), FakeTree.DEVICE, "Connected", false);
        }
        forgetLink();
    }

    private void forgetLink() {
        tree.connected = false;
        tree.resolved = false;
        tree.notifying = false;
        muted = false;
    }

    private void appear() {
        if (tree.discovering && tree.inRange && !tree.connected && tree.adapterThere) {
            tree.known = true;
            added(tree.devicePath());
        }
    }

    private synchronized void called(MethodCall call) {
        if (peer.isPresent()) {
            take(call.getName()).ifPresentOrElse(bend -> answerBent(call, bend), () -> answer(call));
        }
    }

    private void answerBent(MethodCall call, Bend bend) {
        switch (bend.way()) {
            case DELAY -> after(Duration.ofMillis(200 + random.nextInt(4000)), () -> answer(call));
            case ODD -> {
                OddValues.Body body = OddValues.body(random);
                reply(call, body.signature(), body.values());
            }
            case REFUSE -> refuse(call, bend.error());
            case TWICE -> {
                answer(call);
                reply(call, "s", "once more");
            }
            // LOSE: that is all.
            default -> {}
        }
    }

    private Optional<Bend> take(String method) {
        Optional<Bend> bend = bends.stream().filter(each -> each.isFor(method)).findFirst();
        bend.filter(Bend::isSpentBy).ifPresent(bends::remove);
        return bend;
    }

    private void answer(MethodCall call) {
        switch (call.getName()) {
            case "GetManagedObjects" -> {
                treesRead++;
                reply(call, "a{oa{sa{sv}}}", tree.all());
            }
            case "Get" -> get(call);
            case "Set" -> {
                tree.powered = true;
                reply(call, "");
            }
            case "StartDiscovery" -> startDiscovery(call);
            case "SetDiscoveryFilter", "StopDiscovery" -> {
                tree.discovering &= call.getName().equals("SetDiscoveryFilter");
                reply(call, "");
            }
            case "RemoveDevice" -> {
                removals.add(String.valueOf(RawPeer.arguments(call)[0]));
                linkDown();
                tree.known = false;
                reply(call, "");
            }
            case "Connect" -> connect(call);
            case "Disconnect" -> {
                linkDown();
                reply(call, "");
            }
            default -> answerCharacteristic(call);
        }
    }

    private void answerCharacteristic(MethodCall call) {
        if (!tree.connected || !tree.resolved || tree.object(call.getPath()).isEmpty()) {
            refuse(call, "org.bluez.Error.Failed|Not connected");
            return;
        }
        switch (call.getName()) {
            case "StartNotify" -> {
                tree.notifying = true;
                reply(call, "");
            }
            case "ReadValue" -> reply(call, "ay", (Object) cube.state(clock.nanos() / 1_000_000));
            case "WriteValue" -> reply(call, "");
            default -> refuse(call, "org.freedesktop.DBus.Error.UnknownMethod|no such method");
        }
    }

    private void get(MethodCall call) {
        Object[] asked = RawPeer.arguments(call);
        Variant<?> value = tree.object(call.getPath())
                .getOrDefault(String.valueOf(asked[0]), Map.of())
                .get(String.valueOf(asked[1]));
        if (value == null) {
            refuse(call, "org.freedesktop.DBus.Error.UnknownObject|no such object");
        } else {
            reply(call, "v", value);
        }
    }

    private void startDiscovery(MethodCall call) {
        if (!tree.adapterThere || !tree.powered) {
            refuse(call, "org.bluez.Error.NotReady|Resource Not Ready");
            return;
        }
        tree.discovering = true;
        reply(call, "");
        after(Duration.ofMillis(200), this::appear);
    }

    private void connect(MethodCall call) {
        if (!tree.known || !tree.inRange || tree.connected) {
            refuse(call, "org.bluez.Error.Failed|le-connection-abort-by-local");
            return;
        }
        after(Duration.ofMillis(120), () -> {
            if (tree.known && tree.inRange && tree.adapterThere) {
                linkUp();
                reply(call, "");
            } else {
                refuse(call, "org.bluez.Error.Failed|le-connection-timeout");
            }
        });
    }

    private void reply(MethodCall call, String signature, Object... values) {
        peer.ifPresent(each -> each.reply(call, signature, values));
    }

    private void refuse(MethodCall call, String error) {
        peer.ifPresent(each -> each.refuse(call, error));
    }

    /** Runs a task later, under the lock. */
    void after(Duration delay, Runnable task) {
        Runnable guarded = () -> {
            synchronized (this) {
                task.run();
            }
        };
        try {
            later.schedule(guarded, clock.machineNanos(delay), TimeUnit.NANOSECONDS);
        } catch (RejectedExecutionException e) {
            // The script is over.
        }
    }

    @Override
    public void close() {
        later.shutdownNow();
        Optional<RawPeer> last;
        synchronized (this) {
            last = peer;
            peer = Optional.empty();
        }
        last.ifPresent(RawPeer::close);
    }
}
