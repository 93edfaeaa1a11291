package fermata.daemon.fakebluez;

import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.UInt32;
import org.freedesktop.dbus.types.Variant;

/** Values of types that belong nowhere. */
final class OddValues {
    /** A body of a message: a signature and the values of it. */
    record Body(String signature, Object... values) {}

    private OddValues() {}

    static Body body(RandomGenerator random) {
        return switch (random.nextInt(9)) {
            case 0 -> new Body("");
            case 1 -> new Body("s", text(random));
            case 2 -> new Body("i", random.nextInt());
            case 3 -> new Body("b", random.nextBoolean());
            case 4 -> new Body("as", List.of("a", text(random)));
            case 5 -> new Body("a{sv}", Map.of("Value", variant(random)));
            case 6 -> new Body("v", variant(random));
            case 7 -> new Body("ay", (Object) new byte[600]);
            default -> new Body("sad", text(random), List.of(1.5, Double.NaN));
        };
    }

    static Variant<?> variant(RandomGenerator random) {
        return switch (random.nextInt(9)) {
            case 0 -> new Variant<>(text(random));
            case 1 -> new Variant<>(random.nextInt());
            case 2 -> new Variant<>(new UInt32(4_000_000_000L));
            case 3 -> new Variant<>(random.nextDouble());
            case 4 -> new Variant<>(List.of("1-1-1-1-1", text(random)), "as");
            case 5 -> new Variant<>(new DBusPath("/"));
            case 6 -> new Variant<>(new byte[600], "ay");
            case 7 -> new Variant<>(new Variant<>(text(random)), "v");
            default -> new Variant<>(Map.of("x", new Variant<>(1)), "a{sv}");
        };
    }

    static String text(RandomGenerator random) {
        return switch (random.nextInt(5)) {
            case 0 -> "";
            case 1 -> "\u001b[2J\u0007";
            case 2 -> "x".repeat(5000);
            case 3 -> "00001812-0000-1000-8000-00805f9b34f";
            default -> "not one of yours";
        };
    }
}
