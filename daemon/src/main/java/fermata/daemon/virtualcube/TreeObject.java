package fermata.daemon.virtualcube;

import java.util.LinkedHashMap;
import java.util.Map;
import org.freedesktop.dbus.interfaces.Properties;
import org.freedesktop.dbus.types.Variant;

/** One object of the tree with the properties of its interfaces. Guards itself; knows nothing of the bus. */
class TreeObject implements Properties {
    private final String path;
    private final Map<String, Map<String, Variant<?>>> interfaces = new LinkedHashMap<>();

    TreeObject(String path) {
        this.path = path;
    }

    @Override
    public final String getObjectPath() {
        return path;
    }

    /** Sets a property without telling anybody. */
    final synchronized void put(String interfaceName, String property, Variant<?> value) {
        interfaces.computeIfAbsent(interfaceName, name -> new LinkedHashMap<>()).put(property, value);
    }

    /** Takes a property away without telling anybody. */
    final synchronized void take(String interfaceName, String property) {
        interfaces.get(interfaceName).remove(property);
    }

    final synchronized Object value(String interfaceName, String property) {
        return interfaces.get(interfaceName).get(property).getValue();
    }

    final boolean isTrue(String interfaceName, String property) {
        return Boolean.TRUE.equals(value(interfaceName, property));
    }

    /** A copy of everything: interface to property to value. */
    final synchronized Map<String, Map<String, Variant<?>>> everything() {
        Map<String, Map<String, Variant<?>>> copy = new LinkedHashMap<>();
        interfaces.forEach((name, properties) -> copy.put(name, new LinkedHashMap<>(properties)));
        return copy;
    }

    @Override
    @SuppressWarnings("unchecked")
    public synchronized <A> A Get(String interfaceName, String property) {
        Map<String, Variant<?>> properties = interfaces.getOrDefault(interfaceName, Map.of());
        // The interface promises whatever the caller asks for; the bus sends the variant as it is.
        return (A) properties.get(property);
    }

    @Override
    public <A> void Set(String interfaceName, String property, A value) {
        throw new org.bluez.Error.NotSupported("Property " + property + " cannot be set");
    }

    @Override
    public synchronized Map<String, Variant<?>> GetAll(String interfaceName) {
        return new LinkedHashMap<>(interfaces.getOrDefault(interfaceName, Map.of()));
    }
}
