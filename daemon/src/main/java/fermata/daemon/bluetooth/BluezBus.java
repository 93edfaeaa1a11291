package fermata.daemon.bluetooth;

import fermata.daemon.capture.LinkFault;
import fermata.daemon.time.Deadline;
import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.stream.Collectors;
import org.freedesktop.dbus.connections.IDisconnectCallback;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.connections.impl.DBusConnectionBuilder;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.interfaces.DBus;
import org.freedesktop.dbus.interfaces.DBusSigHandler;
import org.freedesktop.dbus.interfaces.ObjectManager;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.matchrules.DBusMatchRule;
import org.freedesktop.dbus.matchrules.DBusMatchRuleBuilder;
import org.freedesktop.dbus.messages.Error;
import org.freedesktop.dbus.messages.Message;
import org.freedesktop.dbus.messages.MethodCall;
import org.freedesktop.dbus.types.Variant;

/**
 * A connection to a bus with BlueZ on it: bounded calls out, facts about the service in.
 *
 * <p>Signals are handled by one thread, in order. Calls are written message by message rather than through the
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

    private static final String OBJECT_MANAGER = "org.freedesktop.DBus.ObjectManager";
    private static final String SYSTEM = "system";
    /** How long the library itself tries to connect; short, because the loop above tries again and can be stopped. */
    private static final int CONNECT_MILLIS = 1000;

    private static final long SLICE_MILLIS = 20;

    private final DBusConnection connection;
    private final LinkWatch watch;
    private final Duration callLimit;

    private BluezBus(DBusConnection connection, LinkWatch watch, Duration callLimit) {
        this.connection = connection;
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
            BluezBus bus = new BluezBus(connection, watch, callLimit);
            try {
                bus.followOwner(life);
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

    private void followOwner(long life) throws DBusException {
        connection.addSigHandler(DBus.NameOwnerChanged.class, signal -> {
            if (signal.name.equals(SERVICE)) {
                watch.ownerChanged(life, named(signal.newOwner));
            }
        });
        watch.ownerChanged(life, named(connection.getDBusOwnerName(SERVICE)));
    }

    /** A bus says that a name has no owner by an error, which the library makes null of, or by an empty one. */
    private static Optional<String> named(String owner) {
        return Optional.ofNullable(owner).filter(name -> !name.isEmpty());
    }

    /** Follows the coming and going of objects of one life of the service; ends with what is returned. */
    Subscription followTree(String owner) {
        Subscription added = handle(
                ObjectManager.InterfacesAdded.class, rule -> rule.withSender(owner), signal -> watch.treeChanged());
        Subscription removed = handle(
                ObjectManager.InterfacesRemoved.class,
                rule -> rule.withSender(owner),
                signal -> watch.removed(signal.getSignalSource().getPath(), signal.getInterfaces()));
        return () -> {
            added.close();
            removed.close();
        };
    }

    /**
     * Follows the properties of one device and what is below it, in one life of the service; ends with what is
     * returned.
     */
    Subscription followDevice(String owner, String devicePath, DBusSigHandler<Properties.PropertiesChanged> handler) {
        return handle(
                Properties.PropertiesChanged.class,
                rule -> rule.withSender(owner).withPathNamespace(devicePath),
                handler);
    }

    private interface Narrowing {
        DBusMatchRuleBuilder apply(DBusMatchRuleBuilder rule);
    }

    private <T extends org.freedesktop.dbus.messages.DBusSignal> Subscription handle(
            Class<T> type, Narrowing narrowing, DBusSigHandler<T> handler) {
        try {
            DBusMatchRule rule = narrowing
                    .apply(DBusMatchRuleBuilder.create().withType(type))
                    .build();
            return Subscription.of(connection.addSigHandler(rule, handler), watch::isBusLost);
        } catch (DBusException | RuntimeException e) {
            throw new LinkException(LinkFault.RETRY_SLOW, "the bus refuses a subscription: " + e.getMessage(), e);
        }
    }

    /** The whole object tree, as the service has it now. */
    ObjectSnapshot objects() {
        return ObjectSnapshot.of(call("/", OBJECT_MANAGER, "GetManagedObjects", "")[0]);
    }

    /** A property's value, freed of its variant. */
    Object property(String path, String interfaceName, String name) {
        Object value = call(path, PROPERTIES, "Get", "ss", interfaceName, name)[0];
        return value instanceof Variant<?> variant ? variant.getValue() : value;
    }

    void setProperty(String path, String interfaceName, String name, Variant<?> value) {
        call(path, PROPERTIES, "Set", "ssv", interfaceName, name, value);
    }

    /** Calls and waits for the answer within the usual limit. */
    Object[] call(String path, String interfaceName, String method, String signature, Object... arguments) {
        MethodCall call = send(path, interfaceName, method, signature, arguments);
        awaitAnswer(call, callLimit, () -> watch.isBusLost() || watch.owner().isEmpty());
        return answer(call, method + " on " + path);
    }

    /** Sends a call whose answer is fetched later, if ever. */
    MethodCall send(String path, String interfaceName, String method, String signature, Object... arguments) {
        try {
            MethodCall call = connection
                    .getMessageFactory()
                    .createMethodCall(
                            null,
                            SERVICE,
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

    /** The answer's values; throws what the service answered, or that it did not. */
    Object[] answer(MethodCall call, String what) {
        Message reply = call.hasReply() ? call.getReply(SLICE_MILLIS) : null;
        try {
            if (reply instanceof Error error) {
                String text = Arrays.stream(error.getParameters())
                        .map(String::valueOf)
                        .collect(Collectors.joining(" "));
                throw new LinkException(
                        FaultTable.classify(error.getName(), text), what + ": " + error.getName() + " " + text);
            }
            if (reply == null) {
                throw new LinkException(LinkFault.RETRY_FAST, what + ": no answer");
            }
            return reply.getParameters();
        } catch (DBusException e) {
            throw new LinkException(LinkFault.RETRY_SLOW, what + ": unreadable answer", e);
        }
    }

    /** Options of BlueZ's methods that take a dictionary, when there are none to give. */
    static Map<String, Variant<?>> noOptions() {
        return Map.of();
    }

    @Override
    public void close() {
        connection.disconnect();
    }
}
