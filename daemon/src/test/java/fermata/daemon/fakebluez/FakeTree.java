package fermata.daemon.fakebluez;

import fermata.decoder.stream.OpenLayout;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/** The objects that the fake shows, with whatever neighbours it was given. Guarded by whoever owns it. */
final class FakeTree {
    static final String ADAPTER = "org.bluez.Adapter1";
    static final String DEVICE = "org.bluez.Device1";
    static final String CHARACTERISTIC = "org.bluez.GattCharacteristic1";
    static final String CUBE_ADDRESS = "02:00:00:00:00:0C";

    private final Map<String, Map<String, Map<String, Variant<?>>>> neighbours = new LinkedHashMap<>();
    int adapterNumber;
    boolean adapterThere = true;
    boolean powered = true;
    boolean discovering;
    boolean known;
    boolean inRange;
    boolean connected;
    boolean resolved;
    boolean notifying;
    boolean paired;

    String adapterPath() {
        return "/org/bluez/hci" + adapterNumber;
    }

    String devicePath() {
        return adapterPath() + "/dev_02_00_00_00_00_0C";
    }

    String turnsPath() {
        return devicePath() + "/service0010/char0011";
    }

    String statePath() {
        return devicePath() + "/service0010/char0014";
    }

    /** Everything, as GetManagedObjects gives it. */
    Map<DBusPath, Map<String, Map<String, Variant<?>>>> all() {
        Map<DBusPath, Map<String, Map<String, Variant<?>>>> all = new LinkedHashMap<>();
        for (String path : paths()) {
            all.put(new DBusPath(path), object(path));
        }
        return all;
    }

    private List<String> paths() {
        List<String> paths = new ArrayList<>(neighbours.keySet());
        paths.add("/org/bluez");
        if (adapterThere) {
            paths.add(adapterPath());
            if (known) {
                paths.add(devicePath());
                paths.addAll(resolved ? List.of(turnsPath(), statePath()) : List.of());
            }
        }
        return paths;
    }

    /** One object: interface to property to value; empty where there is none. */
    Map<String, Map<String, Variant<?>>> object(String path) {
        if (neighbours.containsKey(path)) {
            return neighbours.get(path);
        }
        if (path.equals("/org/bluez")) {
            return Map.of("org.bluez.AgentManager1", Map.of());
        }
        if (!paths().contains(path)) {
            return Map.of();
        }
        if (path.equals(adapterPath())) {
            return Map.of(
                    ADAPTER,
                    Map.of(
                            "Address", new Variant<>("02:00:00:00:00:0A"),
                            "Powered", new Variant<>(powered),
                            "Discovering", new Variant<>(discovering)));
        }
        return path.equals(devicePath()) ? Map.of(DEVICE, device()) : Map.of(CHARACTERISTIC, characteristic(path));
    }

    private Map<String, Variant<?>> device() {
        Map<String, Variant<?>> device = new LinkedHashMap<>();
        device.put("Address", new Variant<>(CUBE_ADDRESS));
        device.put("Name", new Variant<>("galley"));
        device.put("Alias", new Variant<>("galley"));
        device.put("Paired", new Variant<>(paired));
        device.put("Connected", new Variant<>(connected));
        device.put("ServicesResolved", new Variant<>(resolved));
        device.put("UUIDs", new Variant<>(List.of(OpenLayout.SERVICE.toString()), "as"));
        if (inRange && !connected) {
            device.put("RSSI", new Variant<>((short) -60));
        }
        return device;
    }

    private Map<String, Variant<?>> characteristic(String path) {
        boolean turns = path.equals(turnsPath());
        return Map.of(
                "UUID", new Variant<>((turns ? OpenLayout.TURNS : OpenLayout.STATE).toString()),
                "Notifying", new Variant<>(turns && notifying),
                "Flags", new Variant<>(List.of(turns ? "notify" : "read"), "as"));
    }

    /** One more neighbour of whom little can be read; its path. */
    String addNeighbour(RandomGenerator random) {
        String path = adapterPath() + "/dev_" + Integer.toHexString(0x10000000 + random.nextInt(0xFFFFFFF));
        Map<String, Variant<?>> device = new LinkedHashMap<>();
        device.put("Address", random.nextInt(3) == 0 ? OddValues.variant(random) : new Variant<>("03:00:00:00:00:01"));
        device.put("Name", random.nextBoolean() ? OddValues.variant(random) : new Variant<>("neighbour"));
        device.put(
                "UUIDs",
                switch (random.nextInt(3)) {
                    case 0 -> new Variant<>(List.of("180f", "zzzz1812-0000-1000-8000-00805f9b34fb", ""), "as");
                    case 1 -> OddValues.variant(random);
                    default -> new Variant<>(List.of("00001812-0000-1000-8000-00805f9b34fb"), "as");
                });
        device.put("RSSI", random.nextBoolean() ? OddValues.variant(random) : new Variant<>((short) -90));
        device.put("Connected", random.nextInt(4) == 0 ? OddValues.variant(random) : new Variant<>(false));
        neighbours.put(path, Map.of(DEVICE, device));
        if (random.nextInt(3) == 0) {
            neighbours.put(
                    path + "/service0001/char0002", Map.of(CHARACTERISTIC, Map.of("Flags", OddValues.variant(random))));
            neighbours.put(
                    path + "/service0001/char0003", Map.of(CHARACTERISTIC, Map.of("UUID", OddValues.variant(random))));
        }
        return path;
    }

    /** The same of our own cube: a characteristic beside the wanted ones that has no UUID. */
    void addNamelessCharacteristic() {
        neighbours.put(devicePath() + "/service0010/char0001", Map.of(CHARACTERISTIC, Map.of()));
    }
}
