package fermata.daemon.bluetooth;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.freedesktop.dbus.types.Variant;

/** BlueZ's object tree at one moment: path to interface to property to bare value. Immutable. */
final class ObjectSnapshot {
    private final Map<String, Map<String, Map<String, Object>>> objects;

    private ObjectSnapshot(Map<String, Map<String, Map<String, Object>>> objects) {
        this.objects = objects;
    }

    /** Reads the answer of GetManagedObjects; anything but that is an {@link IllegalArgumentException}. */
    static ObjectSnapshot of(Object answer) {
        Map<String, Map<String, Map<String, Object>>> objects = new TreeMap<>();
        map(answer).forEach((path, interfaces) -> {
            Map<String, Map<String, Object>> read = new HashMap<>();
            map(interfaces).forEach((name, properties) -> {
                Map<String, Object> values = new HashMap<>();
                map(properties).forEach((property, value) -> values.put(property.toString(), bare(value)));
                read.put(name.toString(), values);
            });
            objects.put(path.toString(), read);
        });
        return new ObjectSnapshot(objects);
    }

    private static Map<?, ?> map(Object value) {
        if (value instanceof Map<?, ?> map) {
            return map;
        }
        throw new IllegalArgumentException("GetManagedObjects answered " + value + " where a dictionary belongs");
    }

    static Object bare(Object value) {
        return value instanceof Variant<?> variant ? variant.getValue() : value;
    }

    /** An adapter. */
    record Adapter(String path, String address, boolean powered) {}

    /** A device; {@code inRange} says that this scan has heard it. */
    record Device(String path, String address, String name, Set<UUID> services, boolean connected, boolean inRange) {}

    List<Adapter> adapters() {
        List<Adapter> found = new ArrayList<>();
        with(BluezBus.ADAPTER)
                .forEach((path, properties) ->
                        found.add(new Adapter(path, text(properties, "Address"), isTrue(properties, "Powered"))));
        return found;
    }

    /** Whether an adapter is there and scans, for whomever. */
    boolean isScanning(String adapterPath) {
        return isTrue(
                objects.getOrDefault(adapterPath, Map.of()).getOrDefault(BluezBus.ADAPTER, Map.of()), "Discovering");
    }

    /** The devices of one adapter. */
    List<Device> devices(String adapterPath) {
        List<Device> found = new ArrayList<>();
        with(BluezBus.DEVICE).forEach((path, properties) -> {
            if (path.startsWith(adapterPath + "/")) {
                found.add(device(path, properties));
            }
        });
        return found;
    }

    private static Device device(String path, Map<String, Object> properties) {
        String name = text(properties, "Name");
        return new Device(
                path,
                text(properties, "Address"),
                name.isEmpty() ? text(properties, "Alias") : name,
                uuids(properties.get("UUIDs")),
                isTrue(properties, "Connected"),
                properties.containsKey("RSSI"));
    }

    /** Path of each characteristic of a device by its UUID; the first one where a UUID occurs twice. */
    Map<UUID, String> characteristics(String devicePath) {
        Map<UUID, String> found = new LinkedHashMap<>();
        with(BluezBus.CHARACTERISTIC).forEach((path, properties) -> {
            if (path.startsWith(devicePath + "/")) {
                found.putIfAbsent(UUID.fromString(text(properties, "UUID")), path);
            }
        });
        return found;
    }

    /** The ATT MTU under a characteristic, in bytes; empty where the service does not tell (before 5.62). */
    OptionalInt mtuBytes(String characteristicPath) {
        Object mtu = objects.getOrDefault(characteristicPath, Map.of())
                .getOrDefault(BluezBus.CHARACTERISTIC, Map.of())
                .get("MTU");
        return mtu instanceof Number number ? OptionalInt.of(number.intValue()) : OptionalInt.empty();
    }

    /** The charge that the service itself has read from a device. */
    Optional<byte[]> battery(String devicePath) {
        Object percent = objects.getOrDefault(devicePath, Map.of())
                .getOrDefault(BluezBus.BATTERY, Map.of())
                .get("Percentage");
        return percent instanceof Number number ? Optional.of(new byte[] {number.byteValue()}) : Optional.empty();
    }

    private Map<String, Map<String, Object>> with(String interfaceName) {
        return objects.entrySet().stream()
                .filter(entry -> entry.getValue().containsKey(interfaceName))
                .collect(Collectors.toMap(
                        Map.Entry::getKey, entry -> entry.getValue().get(interfaceName), (a, b) -> a, TreeMap::new));
    }

    private static String text(Map<String, Object> properties, String name) {
        return String.valueOf(properties.getOrDefault(name, ""));
    }

    private static boolean isTrue(Map<String, Object> properties, String name) {
        return Boolean.TRUE.equals(properties.get(name));
    }

    private static Set<UUID> uuids(Object value) {
        Collection<?> all = value instanceof Collection<?> collection
                ? collection
                : value instanceof Object[] array ? List.of(array) : List.of();
        return all.stream()
                .map(each -> UUID.fromString(each.toString().toLowerCase(Locale.ROOT)))
                .collect(Collectors.toSet());
    }
}
