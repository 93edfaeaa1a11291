package fermata.daemon.bluetooth;

import fermata.daemon.capture.LinkFault;
import fermata.daemon.time.Deadline;
import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.freedesktop.dbus.connections.IDisconnectCallback;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.interfaces.DBusSigHandler;
import org.freedesktop.dbus.matchrules.DBusMatchRule;
import org.freedesktop.dbus.matchrules.DBusMatchRuleBuilder;
import org.freedesktop.dbus.messages.DBusSignal;
import org.freedesktop.dbus.messages.Error;
import org.freedesktop.dbus.messages.Message;
import org.freedesktop.dbus.messages.MethodCall;
import org.freedesktop.dbus.types.Variant;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A connection to a bus with BlueZ on it: bounded calls out, facts about the service in.
 *
 * <p>Signals are handled by one thread, in order, and read by {@link BusSignal} rather than by the library, which
 * trusts that a body is what its interface says. Calls are written message by message rather than through the
 * library's proxies, because a proxy loses the name of an error it has no class for, and has one time-out for the
 * whole JVM. Owned by the central's thread.
 */
final class BluezBus implements AutoCloseable {
    static final String SERVICE = "org.bluez";
    static final String ADAPTER = "org.bluez.Adapter1";
    static final String DEVICE = "org.bluez.Device1";
    static final String CHARACTERISTIC = "org.bluez.GattCharacteristic1";
    static final String BATTERY = "org.bluez.Battery1";
    static final String PROPERTIES = "org.freedesktop.DBus.Properties";

    private static final Logger LOG = LoggerFactory.getLogger(BluezBus.class);
    private static final String BUS = "org.freedesktop.DBus";
    private static final String BUS_INTERFACE = "org.freedesktop.DBus";
    private static final String OBJECT_MANAGER = "org.freedesktop.DBus.ObjectManager";
    private static final String SYSTEM = "system";
    /** How long the library itself tries to connect; short, because the loop above tries again and can be stopped. */
    private static final int CONNECT_MILLIS = 1000;

    private static final long SLICE_MILLIS = 20;

    /** A bus daemon answers within milliseconds; one that needs this long serves nobody. */
    private static final Duration BUS_LIMIT = Duration.ofSeconds(5);

    private final DBusConnection connection;
    private final long life;
    private final LinkWatch watch;
    private final Duration callLimit;

    private BluezBus(DBusConnection connection, long life, LinkWatch watch, Duration callLimit) {
        this.connection = connection;
        this.life = life;
        this.watch = watch;
        this.callLimit = callLimit;
    }

    /**
     * Connects and begins to follow the service's name.
     *
     * @param address a D-Bus address, or {@code system}
     */
    static BluezBus open(String address, LinkWatch watch, Duration callLimit) {
        try {
            DBusConnectionBuilder builder = address.equals(SYSTEM)
                    ? DBusConnectionBuilder.forSystemBus()
                    : DBusConnectionBuilder.forAddress(address);
            long life = watch.busOpened();
            DBusConnection connection = builder.withShared(false)
                    .transportConfig()
                    .withTimeout(CONNECT_MILLIS)
                    .back()
                    .receivingThreadConfig()
                    .withSignalThreadCount(1)
                    .connectionConfig()
                    .withDisconnectCallback(new LossCallback(watch, life))
                    .build();
            BluezBus bus = new BluezBus(connection, life, watch, callLimit);
            try {
                bus.followOwner();
            } catch (DBusException | RuntimeException e) {
                connection.disconnect();
                throw e;
            }
            return bus;
        } catch (DBusException | RuntimeException e) {
            throw new LinkException(
                    LinkFault.RETRY_SLOW, "cannot connect to the D-Bus bus \"" + address + "\": " + e.getMessage(), e);
        }
    }

    private record LossCallback(LinkWatch watch, long life) implements IDisconnectCallback {
        @Override
        public void disconnectOnError(IOException error) {
            watch.busLost(life, String.valueOf(error.getMessage()));
        }

        @Override
        public void clientDisconnect() {
            watch.busLost(life, "the bus closed the connection");
        }
    }

    private void followOwner() throws DBusException {
        DBusMatchRule rule =
                signals(BUS_INTERFACE).withMember("NameOwnerChanged").build();
        connection.addGenericSigHandler(rule, signal -> {
            // Any client may send a signal of this name; only the bus's own word counts. A bus within a JVM may sign
            // with nothing.
            boolean isTheBus = signal.getSource() == null || signal.getSource().equals(BUS);
            if (isTheBus
                    && BusSignal.read(signal).orElse(null) instanceof BusSignal.OwnerChanged change
                    && change.name().equals(SERVICE)) {
                watch.ownerChanged(life, change.owner());
            }
        });
        watch.ownerChanged(life, named(connection.getDBusOwnerName(SERVICE)));
    }

    /** A bus says that a name has no owner by an error, which the library makes null of, or by an empty one. */
    private static Optional<String> named(String owner) {
        return Optional.ofNullable(owner).filter(name -> !name.isEmpty());
    }

    /**
     * Asks the bus itself who owns the service's name, and takes its answer for what signals have said: one may be
     * lost, doubled or late. A bus that does not answer is lost, as is one whose reader has died in this process.
     */
    void verifyOwner() {
        long changes = watch.ownerChanges();
        MethodCall call = send(BUS, "/org/freedesktop/DBus", BUS_INTERFACE, "GetNameOwner", "s", SERVICE);
        awaitAnswer(call, BUS_LIMIT, watch::isOverForAll);
        Message reply = call.hasReply() ? call.getReply(SLICE_MILLIS) : null;
        if (reply == null) {
            if (!watch.isOverForAll()) {
                watch.busLost(life, "the bus does not answer");
            }
            return;
        }
        boolean isRefusal = reply instanceof Error;
        Optional<String> owner =
                isRefusal ? Optional.empty() : BusValue.text(first(reply)).filter(name -> !name.isEmpty());
        if (watch.ownerChanges() == changes
                && (!isRefusal || String.valueOf(reply.getName()).endsWith("HasNoOwner"))) {
            watch.ownerChanged(life, owner);
        }
    }

    /** Follows the coming and going of objects of one life of the service; ends with what is returned. */
    Subscription followTree(String owner, Consumer<BusSignal> listener) {
        return follow(
                signals(OBJECT_MANAGER).withSender(owner),
                signal -> BusSignal.read(signal).ifPresent(listener));
    }

    /**
     * Follows the properties of one device and what is below it, in one life of the service; ends with what is
     * returned. The signals come as they are, so that they can be stamped before they are read.
     */
    Subscription followDevice(String owner, String devicePath, DBusSigHandler<DBusSignal> handler) {
        return follow(
                signals(PROPERTIES)
                        .withMember("PropertiesChanged")
                        .withSender(owner)
                        .withPathNamespace(devicePath),
                handler);
    }

    private static DBusMatchRuleBuilder signals(String interfaceName) {
        return DBusMatchRuleBuilder.create().withType("signal").withInterface(interfaceName);
    }

    private Subscription follow(DBusMatchRuleBuilder rule, DBusSigHandler<DBusSignal> handler) {
        DBusSigHandler<DBusSignal> guarded = signal -> {
            try {
                handler.handle(signal);
            } catch (RuntimeException e) {
                // Else the library's thread for signals would end, and say so to nobody.
                LOG.warn("a signal could not be handled and is left out", e);
            }
        };
        try {
            return Subscription.of(connection.addGenericSigHandler(rule.build(), guarded), watch::isBusLost);
        } catch (DBusException | RuntimeException e) {
            throw new LinkException(LinkFault.RETRY_SLOW, "the bus refuses a subscription: " + e.getMessage(), e);
        }
    }

    /** The whole object tree, as the service has it now. */
    ObjectSnapshot objects() {
        return ObjectSnapshot.of(call("/", OBJECT_MANAGER, "GetManagedObjects", ""));
    }

    /** A property's value, freed of its variant; null where the answer was empty. */
    Object property(String path, String interfaceName, String name) {
        return BusValue.bare(call(path, PROPERTIES, "Get", "ss", interfaceName, name));
    }

    /** A characteristic's value, as the device has it now. */
    byte[] readValue(String path) {
        Object value = call(path, CHARACTERISTIC, "ReadValue", "a{sv}", Map.of());
        return BusValue.bytes(value)
                .orElseThrow(() -> FaultTable.odd("ReadValue on " + path + " answered " + BusValue.inWords(value)));
    }

    void setProperty(String path, String interfaceName, String name, Variant<?> value) {
        call(path, PROPERTIES, "Set", "ssv", interfaceName, name, value);
    }

    /** Calls and waits for the answer within the usual limit; its first value, null where it has none. */
    Object call(String path, String interfaceName, String method, String signature, Object... arguments) {
        return call(callLimit, path, interfaceName, method, signature, arguments);
    }

    /** The same within a limit of its own. */
    Object call(
            Duration limit, String path, String interfaceName, String method, String signature, Object... arguments) {
        MethodCall call = send(path, interfaceName, method, signature, arguments);
        awaitAnswer(call, limit, () -> watch.isBusLost() || watch.owner().isEmpty());
        return answer(call, method + " on " + path);
    }

    /** Sends a call to the service; its answer is fetched later, if ever. */
    MethodCall send(String path, String interfaceName, String method, String signature, Object... arguments) {
        return send(SERVICE, path, interfaceName, method, signature, arguments);
    }

    private MethodCall send(
            String service, String path, String interfaceName, String method, String signature, Object... arguments) {
        try {
            MethodCall call = connection
                    .getMessageFactory()
                    .createMethodCall(
                            null,
                            service,
                            path,
                            interfaceName,
                            method,
                            (byte) 0,
                            signature.isEmpty() ? null : signature,
                            arguments);
            connection.sendMessage(call);
            return call;
        } catch (DBusException | RuntimeException e) {
            throw new LinkException(
                    LinkFault.RETRY_SLOW, "cannot send " + method + " to " + path + ": " + e.getMessage(), e);
        }
    }

    /** Waits until the call is answered, {@code enough} holds (looked at now and then) or the limit has passed. */
    void awaitAnswer(MethodCall call, Duration limit, BooleanSupplier enough) {
        Deadline deadline = watch.patience(limit);
        while (!call.hasReply()
                && !enough.getAsBoolean()
                && !Thread.currentThread().isInterrupted()) {
            long leftMillis = deadline.leftNanos() / 1_000_000;
            if (leftMillis == 0) {
                return;
            }
            call.getReply(Math.min(leftMillis, SLICE_MILLIS));
        }
    }

    /** The answer's first value, or null; throws what the service answered, or that it did not. */
    Object answer(MethodCall call, String what) {
        Message reply = call.hasReply() ? call.getReply(SLICE_MILLIS) : null;
        if (reply instanceof Error error) {
            String name = String.valueOf(error.getName());
            String text = BusValue.text(first(error)).orElse("");
            throw new LinkException(FaultTable.classify(name, text), what + ": " + name + " " + text);
        }
        if (reply == null) {
            throw new LinkException(LinkFault.RETRY_FAST, what + ": no answer");
        }
        return first(reply);
    }

    /** A message's first value; null where it has none, or none that can be read. */
    private static Object first(Message message) {
        try {
            Object[] values = message.getParameters();
            return values == null || values.length == 0 ? null : values[0];
        } catch (DBusException | RuntimeException e) {
            return null;
        }
    }

    @Override
    public void close() {
        connection.disconnect();
    }
}
