package fermata.daemon.bluetooth;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.messages.DBusSignal;

/** A signal that we listen for, read at the border to the bus. What does not have its shape is no signal to us. */
sealed interface BusSignal {
    /** Properties of one interface of one object have changed; values as they came. */
    record Changed(String path, String interfaceName, Map<String, Object> properties) implements BusSignal {}

    /** An object came or got interfaces: interface to property to value. */
    record Added(String path, Map<String, Map<String, Object>> interfaces) implements BusSignal {}

    /** An object lost interfaces. */
    record Removed(String path, List<String> interfaces) implements BusSignal {}

    /** A name on the bus has another owner, or none. */
    record OwnerChanged(String name, Optional<String> owner) implements BusSignal {}

    /** What a message says; empty where it is not one of these, or not shaped like one. */
    static Optional<BusSignal> read(DBusSignal signal) {
        try {
            Object[] values = signal.getParameters();
            return values == null || signal.getName() == null ? Optional.empty() : read(signal, values);
        } catch (DBusException | RuntimeException e) {
            // The library reads a body when asked, and fails in many ways at one that is not what its head says.
            return Optional.empty();
        }
    }

    private static Optional<BusSignal> read(DBusSignal signal, Object[] values) {
        return switch (signal.getName()) {
            case "PropertiesChanged" -> changed(signal.getPath(), values);
            case "InterfacesAdded" -> added(values);
            case "InterfacesRemoved" -> removed(values);
            case "NameOwnerChanged" -> ownerChanged(values);
            default -> Optional.empty();
        };
    }

    private static Optional<BusSignal> changed(String path, Object[] values) {
        Optional<String> name = BusValue.text(at(values, 0));
        return BusValue.dictionary(at(values, 1))
                .flatMap(properties -> name.map(n -> new Changed(path, n, properties)));
    }

    private static Optional<BusSignal> added(Object[] values) {
        return BusValue.text(at(values, 0)).map(path -> new Added(path, ObjectSnapshot.interfaces(at(values, 1))));
    }

    private static Optional<BusSignal> removed(Object[] values) {
        return BusValue.text(at(values, 0)).map(path -> new Removed(path, BusValue.texts(at(values, 1))));
    }

    private static Optional<BusSignal> ownerChanged(Object[] values) {
        Optional<String> owner = BusValue.text(at(values, 2));
        return owner.isEmpty()
                ? Optional.empty()
                : BusValue.text(at(values, 0)).map(name -> new OwnerChanged(name, owner.filter(o -> !o.isEmpty())));
    }

    private static Object at(Object[] values, int index) {
        return index < values.length ? values[index] : null;
    }
}
