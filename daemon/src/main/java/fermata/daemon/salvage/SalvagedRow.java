package fermata.daemon.salvage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * A record that was found.
 *
 * @param rowId its row's number; 0 where the table has none
 * @param isListed whether its page's directory names it; else it was found by trying every byte
 * @param values each a {@link Long}, {@link Double}, {@link String}, {@code byte[]} or null
 */
public record SalvagedRow(long rowId, boolean isListed, List<Object> values) {
    public SalvagedRow {
        values = Collections.unmodifiableList(new ArrayList<>(values));
    }

    /** Whether the values have these kinds: i a whole number, n the same or null, t text, b bytes. */
    public boolean hasKinds(String kinds) {
        if (values.size() != kinds.length()) {
            return false;
        }
        for (int i = 0; i < kinds.length(); i++) {
            if (!isKind(values.get(i), kinds.charAt(i))) {
                return false;
            }
        }
        return true;
    }

    private static boolean isKind(Object value, char kind) {
        return switch (kind) {
            case 'i' -> value instanceof Long;
            case 'n' -> value == null || value instanceof Long;
            case 't' -> value instanceof String;
            case 'b' -> value instanceof byte[];
            default -> throw new IllegalArgumentException("no kind of value: " + kind);
        };
    }

    /** A whole number. */
    public long number(int index) {
        return (Long) values.get(index);
    }

    /** A text. */
    public String text(int index) {
        return (String) values.get(index);
    }

    /** Bytes. */
    public byte[] bytes(int index) {
        return ((byte[]) values.get(index)).clone();
    }
}
