package fermata.daemon.bluetooth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Pattern;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.types.Variant;

/**
 * The border to the bus: makes our own types of whatever was said. Nothing here throws, since nobody vouches for what
 * a service, a neighbour or a cube says; what is not what it should be is empty or left out. Stateless.
 */
final class BusValue {
    /** The longest value of an attribute, Bluetooth Core Specification 5.4, Vol 3, Part F, 3.2.9. */
    static final int LONGEST_VALUE = 512;
    /** Twice the longest name of a device (248 bytes, Core Specification 5.4, Vol 3, Part C, 3.2.2). */
    private static final int LONGEST_TEXT = 512;

    /** {@link UUID#fromString} alone would take "1-1-1-1-1" for one. */
    private static final Pattern UUID_TEXT =
            Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");

    private BusValue() {}

    /** Freed of its variant, and of variants within it. */
    static Object bare(Object value) {
        Object bare = value;
        while (bare instanceof Variant<?> variant) {
            bare = variant.getValue();
        }
        return bare;
    }

    /** A text or a path, cut where no name would go on. */
    static Optional<String> text(Object value) {
        Object bare = bare(value);
        boolean isText = bare instanceof CharSequence || bare instanceof DBusPath;
        return isText ? Optional.of(bare.toString()).map(BusValue::cut) : Optional.empty();
    }

    private static String cut(String text) {
        return text.length() > LONGEST_TEXT ? text.substring(0, LONGEST_TEXT) : text;
    }

    /** What was said, in so many words as a message has room for. */
    static String inWords(Object value) {
        Object bare = bare(value);
        String kind = bare == null ? "nothing" : bare.getClass().getSimpleName();
        boolean isShort = bare instanceof Number || bare instanceof Boolean || bare instanceof CharSequence;
        return isShort ? kind + " \"" + cut(bare.toString()) + "\"" : kind;
    }

    static Optional<Boolean> flag(Object value) {
        return bare(value) instanceof Boolean flag ? Optional.of(flag) : Optional.empty();
    }

    static OptionalInt number(Object value) {
        return bare(value) instanceof Number number ? OptionalInt.of(number.intValue()) : OptionalInt.empty();
    }

    static Optional<UUID> uuid(Object value) {
        return text(value)
                .map(text -> text.toLowerCase(Locale.ROOT))
                .filter(text -> UUID_TEXT.matcher(text).matches())
                .map(UUID::fromString);
    }

    /** Those of a list that are UUIDs. */
    static Set<UUID> uuids(Object value) {
        Set<UUID> uuids = new HashSet<>();
        items(value).forEach(each -> uuid(each).ifPresent(uuids::add));
        return uuids;
    }

    /** Those of a list that are texts. */
    static List<String> texts(Object value) {
        List<String> texts = new ArrayList<>();
        items(value).forEach(each -> text(each).ifPresent(texts::add));
        return texts;
    }

    private static Collection<?> items(Object value) {
        Object bare = bare(value);
        if (bare instanceof Collection<?> collection) {
            return collection;
        }
        return bare instanceof Object[] array ? Arrays.asList(array) : List.of();
    }

    /** The library gives an array of bytes as one or as a list, by where it stood. */
    static Optional<byte[]> bytes(Object value) {
        Object bare = bare(value);
        if (bare instanceof byte[] array) {
            return array.length <= LONGEST_VALUE ? Optional.of(array.clone()) : Optional.empty();
        }
        if (!(bare instanceof Collection<?>) && !(bare instanceof Object[])) {
            return Optional.empty();
        }
        Collection<?> items = items(bare);
        boolean areBytes = items.size() <= LONGEST_VALUE && items.stream().allMatch(Byte.class::isInstance);
        return areBytes ? Optional.of(bytesOf(items)) : Optional.empty();
    }

    private static byte[] bytesOf(Collection<?> items) {
        byte[] bytes = new byte[items.size()];
        int at = 0;
        for (Object each : items) {
            bytes[at++] = (Byte) each;
        }
        return bytes;
    }

    /** The entries of a dictionary whose keys are texts or paths; values as they came. */
    static Optional<Map<String, Object>> dictionary(Object value) {
        if (!(bare(value) instanceof Map<?, ?> map)) {
            return Optional.empty();
        }
        Map<String, Object> entries = new LinkedHashMap<>();
        map.forEach((key, each) -> text(key).ifPresent(name -> entries.put(name, each)));
        return Optional.of(entries);
    }
}
