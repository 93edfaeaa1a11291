package fermata.daemon.bluetooth;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;

/**
 * BlueZ's object tree at one moment: path to interface to property to value, as far as it can be read. What is odd in
 * it is left out, since most of it is a neighbour's. Immutable.
 */
final class ObjectSnapshot {
    /** Both ends of what the exchange of an ATT MTU can come to, Core Specification 5.4, Vol 3, Part F, 3.2.8. */
    private static final int LEAST_MTU = 23;

    private static final int LARGEST_MTU = 517;
    private static final Set<String> READ =
            Set.of(BluezBus.ADAPTER, BluezBus.DEVICE, BluezBus.CHARACTERISTIC, BluezBus.BATTERY);

    private final Map<String, Map<String, Map<String, Object>>> objects;

    private ObjectSnapshot(Map<String, Map<String, Map<String, Object>>> objects) {
        this.objects = objects;
    }

    /** Reads the answer of GetManagedObjects; a {@link LinkException} where it is no dictionary at all. */
    static ObjectSnapshot of(Object answer) {
        Map<String, Object> all = BusValue.dictionary(answer)
                .orElseThrow(() -> FaultTable.odd("GetManagedObjects answered " + BusValue.inWords(answer)));
        Map<String, Map<String, Map<String, Object>>> objects = new TreeMap<>();
        all.forEach((path, interfaces) -> {
            Map<String, Map<String, Object>> read = interfaces(interfaces);
            if (!read.isEmpty()) {
                objects.put(path, read);
            }
        });
        return new ObjectSnapshot(objects);
    }

    /** The interfaces of one object that mean something to us, with their properties. */
    static Map<String, Map<String, Object>> interfaces(Object value) {
        Map<String, Map<String, Object>> read = new HashMap<>();
        BusValue.dictionary(value).orElse(Map.of()).forEach((name, properties) -> {
            if (READ.contains(name)) {
                BusValue.dictionary(properties).ifPresent(known -> read.put(name, known));
            }
        });
        return read;
    }

    /** An adapter. */
    record Adapter(String path, String address, boolean powered) {}

    /**
     * A device.
     *
     * @param inRange whether this scan has heard it
     * @param bonded whether it has a bond with this board, or may have one for all that can be read
     */
    record Device(
            String path,
            String address,
            String name,
            Set<UUID> services,
            boolean connected,
            boolean inRange,
            boolean bonded) {}

    List<Adapter> adapters() {
        List<Adapter> found = new ArrayList<>();
        with(BluezBus.ADAPTER)
                .forEach((path, properties) ->
                        found.add(new Adapter(path, text(properties, "Address"), isTrue(properties, "Powered"))));
        return found;
    }

    /** Whether an adapter is there and scans, for whomever. */
    boolean isScanning(String adapterPath) {
        return isTrue(properties(adapterPath, BluezBus.ADAPTER), "Discovering");
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

    /** One device, if it is known. */
    Optional<Device> device(String path) {
        return Optional.ofNullable(with(BluezBus.DEVICE).get(path)).map(properties -> device(path, properties));
    }

    static Device device(String path, Map<String, Object> properties) {
        String name = text(properties, "Name");
        return new Device(
                path,
                text(properties, "Address"),
                name.isEmpty() ? text(properties, "Alias") : name,
                BusValue.uuids(properties.get("UUIDs")),
                isTrue(properties, "Connected"),
                properties.containsKey("RSSI"),
                mayBeTrue(properties, "Paired") || mayBeTrue(properties, "Bonded"));
    }

    /** Path of each characteristic of a device by its UUID; the first one where a UUID occurs twice. */
    Map<UUID, String> characteristics(String devicePath) {
        Map<UUID, String> found = new LinkedHashMap<>();
        with(BluezBus.CHARACTERISTIC).forEach((path, properties) -> {
            if (path.startsWith(devicePath + "/")) {
                BusValue.uuid(properties.get("UUID")).ifPresent(uuid -> found.putIfAbsent(uuid, path));
            }
        });
        return found;
    }

    /** The ATT MTU under a characteristic, in bytes; empty where the service does not tell (before 5.62). */
    OptionalInt mtuBytes(String characteristicPath) {
        OptionalInt mtu = BusValue.number(
                properties(characteristicPath, BluezBus.CHARACTERISTIC).get("MTU"));
        boolean isOne = mtu.orElse(0) >= LEAST_MTU && mtu.orElse(0) <= LARGEST_MTU;
        return isOne ? mtu : OptionalInt.empty();
    }

    /** The charge that the service itself has read from a device. */
    Optional<byte[]> battery(String devicePath) {
        OptionalInt percent =
                BusValue.number(properties(devicePath, BluezBus.BATTERY).get("Percentage"));
        return percent.isPresent() ? Optional.of(new byte[] {(byte) percent.getAsInt()}) : Optional.empty();
    }

    private Map<String, Object> properties(String path, String interfaceName) {
        return objects.getOrDefault(path, Map.of()).getOrDefault(interfaceName, Map.of());
    }

    private Map<String, Map<String, Object>> with(String interfaceName) {
        Map<String, Map<String, Object>> found = new LinkedHashMap<>();
        objects.forEach((path, interfaces) -> {
            if (interfaces.containsKey(interfaceName)) {
                found.put(path, interfaces.get(interfaceName));
            }
        });
        return found;
    }

    private static String text(Map<String, Object> properties, String name) {
        return BusValue.text(properties.get(name)).orElse("");
    }

    private static boolean isTrue(Map<String, Object> properties, String name) {
        return BusValue.flag(properties.get(name)).orElse(false);
    }

    /** Whether it is there and is not plainly false. */
    private static boolean mayBeTrue(Map<String, Object> properties, String name) {
        return properties.containsKey(name)
                && BusValue.flag(properties.get(name)).orElse(true);
    }
}
