package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.UInt16;
import org.freedesktop.dbus.types.UInt32;
import org.freedesktop.dbus.types.UInt64;
import org.freedesktop.dbus.types.Variant;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Whatever the tree of objects is said to be, it is read into our own types, and what is asked of it is answered. Each
 * answer is drawn by its seed: trees of the right shape with any value anywhere, and values of no shape at all.
 */
class BusAnswerFuzzTest {
    private static final long LONG_RUN = Long.getLong("fuzz.inputs", 10_000_000) / 50;
    private static final long SEED = Long.getLong("fuzz.seed", 1_000_000_000L);
    private static final String ADAPTER = "/org/bluez/hci0";
    private static final String DEVICE = ADAPTER + "/dev_01_23_45_67_89_AB";
    private static final List<String> PATHS = List.of(
            ADAPTER, DEVICE, DEVICE + "/service000a", DEVICE + "/service000a/char000b", "/", "", "/org/bluez/hci1");
    private static final List<String> INTERFACES = List.of(
            BluezBus.ADAPTER,
            BluezBus.DEVICE,
            "org.bluez.GattCharacteristic1",
            "org.bluez.GattService1",
            "org.bluez.Battery1",
            "org.example.Other");
    private static final List<String> PROPERTIES = List.of(
            "Address",
            "Name",
            "Alias",
            "UUID",
            "UUIDs",
            "Adapter",
            "Powered",
            "Discovering",
            "Connected",
            "Paired",
            "Bonded",
            "ServicesResolved",
            "RSSI",
            "MTU",
            "Percentage",
            "Value",
            "Notifying",
            "Service");

    @Test
    void shouldReadTheTreeWhenAnythingIsSaid() {
        assertThat(run(1, 4_000)).isGreaterThan(1_000);
    }

    @Test
    @Tag("fuzz")
    void shouldReadTheTreeWhenAnythingIsSaidForLong() {
        System.out.printf(
                "bus answers: %,d from seed %d on, %,d of them with something of use%n",
                LONG_RUN, SEED, run(SEED, LONG_RUN));
    }

    /** Reads these and says in how many there was an adapter, a device or a characteristic. */
    private static long run(long from, long count) {
        long useful = 0;
        for (long seed = from; seed < from + count; seed++) {
            Object answer = answer(new SplittableRandom(seed));
            try {
                useful += asked(answer) ? 1 : 0;
            } catch (RuntimeException | StackOverflowError fault) {
                throw new AssertionError("seed " + seed + ": " + fault + " at " + answer, fault);
            }
        }
        return useful;
    }

    private static boolean asked(Object answer) {
        ObjectSnapshot tree;
        try {
            tree = ObjectSnapshot.of(answer);
        } catch (LinkException noTree) {
            // The documented end of an answer that is no tree at all: a fault of the link, which is tried again.
            assertThat(noTree).hasMessageContaining("GetManagedObjects");
            return false;
        }
        boolean useful = !tree.adapters().isEmpty();
        for (String path : PATHS) {
            useful |= !tree.devices(path).isEmpty();
            useful |= tree.device(path).isPresent();
            useful |= !tree.characteristics(path).isEmpty();
            tree.isScanning(path);
            tree.mtuBytes(path);
            tree.battery(path).ifPresent(bytes -> assertThat(bytes).hasSizeLessThanOrEqualTo(BusValue.LONGEST_VALUE));
        }
        BusValue.bytes(answer);
        BusValue.text(answer);
        BusValue.inWords(answer);
        BusValue.uuids(answer);
        return useful;
    }

    private static Object answer(SplittableRandom random) {
        if (random.nextInt(20) == 0) {
            return value(random, 4);
        }
        Map<Object, Object> objects = new LinkedHashMap<>();
        for (String path : PATHS) {
            Object at = path.isEmpty() || random.nextBoolean() ? path : new DBusPath(path);
            objects.put(at, random.nextInt(30) == 0 ? value(random, 3) : interfaces(random));
        }
        return random.nextInt(10) == 0 ? new Variant<>(objects, "a{oa{sa{sv}}}") : objects;
    }

    private static Object interfaces(SplittableRandom random) {
        Map<Object, Object> interfaces = new LinkedHashMap<>();
        for (String name : INTERFACES) {
            if (random.nextInt(3) > 0) {
                interfaces.put(
                        random.nextInt(40) == 0 ? random.nextInt() : name,
                        random.nextInt(20) == 0 ? value(random, 3) : properties(random));
            }
        }
        return interfaces;
    }

    private static Object properties(SplittableRandom random) {
        Map<Object, Object> properties = new LinkedHashMap<>();
        for (String name : PROPERTIES) {
            if (random.nextInt(4) > 0) {
                properties.put(random.nextInt(40) == 0 ? List.of(name) : name, value(random, 2));
            }
        }
        return properties;
    }

    private static Object value(SplittableRandom random, int depth) {
        return switch (random.nextInt(depth > 0 ? 18 : 14)) {
            case 0 -> null;
            case 1 -> random.nextBoolean();
            case 2 -> (byte) random.nextInt();
            case 3 -> random.nextInt();
            case 4 -> new UInt16(random.nextInt(65_536));
            case 5 -> new UInt32(random.nextLong(1L << 32));
            case 6 -> new UInt64(random.nextLong() >>> 1);
            case 7 -> random.nextDouble() * Double.MAX_VALUE;
            case 8 -> "";
            case 9 -> DEVICE;
            case 10 -> "00002a19-0000-1000-8000-00805f9b34f" + (random.nextBoolean() ? "b" : "");
            case 11 -> "\u202ex\u0000".repeat(random.nextInt(600));
            case 12 -> bytes(random);
            case 13 -> new DBusPath(random.nextBoolean() ? ADAPTER : "/");
            case 14 -> new Variant<>(random.nextBoolean() ? "text" : DEVICE);
            case 15 -> several(random, depth - 1);
            case 16 -> several(random, depth - 1).toArray();
            default -> Map.of("Value", random.nextInt(), "x", "y");
        };
    }

    private static Object bytes(SplittableRandom random) {
        byte[] bytes = new byte[random.nextInt(700)];
        random.nextBytes(bytes);
        if (random.nextBoolean()) {
            return bytes;
        }
        List<Byte> list = new ArrayList<>();
        for (byte each : bytes) {
            list.add(each);
        }
        return list;
    }

    private static List<Object> several(SplittableRandom random, int depth) {
        Object[] values = new Object[random.nextInt(5)];
        Arrays.setAll(values, any -> value(random, depth));
        return Arrays.asList(values);
    }
}
