package fermata.decoder.stream.profile;

import fermata.decoder.stream.profile.BitField.Order;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Reads the small parts that all frames share: fields, constants, checks, lengths, UUIDs. Stateless. */
final class FieldParser {
    /** Longest attribute value: Bluetooth Core Specification, Vol 3, Part F, 3.2.9. */
    static final int MAX_FRAME_BYTES = 512;

    private static final Map<String, Order> ORDERS = Map.of("big", Order.BIG, "little", Order.LITTLE);
    private static final Map<String, Checksum.Kind> KINDS = Map.of(
            "sum8", Checksum.Kind.SUM_8,
            "xor8", Checksum.Kind.XOR_8,
            "crc8", Checksum.Kind.CRC_8,
            "crc16", Checksum.Kind.CRC_16);
    /** What 16-bit UUIDs stand in: Bluetooth Core Specification, Vol 3, Part B, 2.5.1. */
    private static final String SHORT_UUID_TAIL = "-0000-1000-8000-00805f9b34fb";

    private FieldParser() {}

    static UUID uuid(JsonSpot spot) {
        String what = "a UUID of 4 hexadecimal digits or in the form 8-4-4-4-12";
        String text = spot.text(what);
        if (text.matches("[0-9a-fA-F]{4}")) {
            return UUID.fromString("0000" + text + SHORT_UUID_TAIL);
        }
        if (text.matches("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}")) {
            return UUID.fromString(text);
        }
        if (!text.isEmpty()) {
            spot.expected(what);
        }
        return new UUID(0, 0);
    }

    /** A field whose spot holds nothing else, within the first {@code limitBytes}. */
    static BitField field(JsonSpot spot, int limitBytes) {
        BitField field = openField(spot, limitBytes);
        spot.close();
        return field;
    }

    /** A turn's code: a field, or an array of fields that are read as one number. */
    static TurnCode code(JsonSpot spot, int limitBytes) {
        if (!spot.isArray()) {
            return TurnCode.of(field(spot, limitBytes));
        }
        List<JsonSpot> items = spot.items(2);
        List<BitField> parts = new ArrayList<>();
        for (JsonSpot item : items.subList(0, Math.min(items.size(), TurnCode.MAX_PARTS))) {
            parts.add(unsigned(item, limitBytes));
        }
        int width = parts.stream().mapToInt(BitField::widthBits).sum();
        boolean fits = items.size() == parts.size()
                && !parts.isEmpty()
                && width <= BitField.MAX_WIDTH_BITS
                && parts.stream().noneMatch(BitField::signed);
        if (!fits) {
            spot.expected("2 to " + TurnCode.MAX_PARTS + " fields that are not signed, of together at most "
                    + BitField.MAX_WIDTH_BITS + " bits");
        }
        return fits ? new TurnCode(parts) : TurnCode.of(new BitField(0, 8, Order.LITTLE, false));
    }

    /** A field that can only be a count of something. */
    static BitField unsigned(JsonSpot spot, int limitBytes) {
        BitField field = field(spot, limitBytes);
        if (field.signed()) {
            spot.expected("a field that is not signed");
        }
        return field;
    }

    /** A field whose spot may hold more; the caller closes it. */
    static BitField openField(JsonSpot spot, int limitBytes) {
        int offsetByte = (int) spot.member("byte", "a byte offset from 0").integer(0, limitBytes - 1);
        return placed(spot, offsetByte, limitBytes);
    }

    private static BitField placed(JsonSpot spot, int offsetByte, int limitBytes) {
        int bit = (int) (long) spot.optional("bit").map(s -> s.integer(0, 7)).orElse(0L);
        int bits = (int) (long) spot.optional("bits")
                .map(s -> s.integer(1, BitField.MAX_WIDTH_BITS))
                .orElse(8L);
        Order order =
                spot.optional("order").map(s -> s.choice(ORDERS, Order.LITTLE)).orElse(Order.LITTLE);
        boolean signed = spot.optional("signed").map(JsonSpot::flag).orElse(false);
        BitField field = new BitField(offsetByte * 8 + bit, bits, order, signed);
        if (field.endBits() > limitBytes * 8) {
            spot.expected("a field that ends within the " + limitBytes + " bytes of the frame; it ends at bit "
                    + field.endBits() + " of " + limitBytes * 8);
        }
        return field;
    }

    static StateEncoding.Run run(JsonSpot spot, int count, int limitBytes) {
        BitField first = openField(spot, limitBytes);
        int stride = (int)
                (long) spot.optional("stride").map(s -> s.integer(1, 4096)).orElse((long) first.widthBits());
        spot.close();
        long end = first.endBits() + (long) stride * (count - 1);
        if (end > limitBytes * 8L && !spot.isMissing()) {
            spot.expected(count + " fields that end within the " + limitBytes + " bytes of the frame; they end at bit "
                    + end + " of " + limitBytes * 8);
        }
        return new StateEncoding.Run(first, stride);
    }

    static FrameLayout.Envelope envelope(JsonSpot spot, String name) {
        int[] bytes = length(spot.member("bytes", "a length, or an array of the shortest and the longest"));
        List<FrameLayout.Constant> constants = new ArrayList<>();
        for (JsonSpot item : spot.optional("constants").map(s -> s.items(1)).orElse(List.of())) {
            constants.add(constant(item, bytes[0]));
        }
        List<Checksum> checksums = new ArrayList<>();
        for (JsonSpot item : spot.optional("checksums").map(s -> s.items(1)).orElse(List.of())) {
            checksums.add(checksum(item, bytes[0]));
        }
        return new FrameLayout.Envelope(name, bytes[0], bytes[1], constants, checksums);
    }

    private static int[] length(JsonSpot spot) {
        if (!spot.isArray()) {
            int exact = (int) spot.integer(1, MAX_FRAME_BYTES);
            return new int[] {exact, exact};
        }
        List<JsonSpot> ends = spot.items(2);
        if (ends.size() != 2) {
            spot.expected("two numbers, the shortest and the longest length");
            return new int[] {1, MAX_FRAME_BYTES};
        }
        int min = (int) ends.get(0).integer(1, MAX_FRAME_BYTES);
        return new int[] {min, (int) ends.get(1).integer(min, MAX_FRAME_BYTES)};
    }

    private static FrameLayout.Constant constant(JsonSpot spot, int minBytes) {
        BitField field = openField(spot, minBytes);
        long max = field.signed() ? field.allOnes() >> 1 : field.allOnes();
        long value = spot.member("value", "the value of the field").integer(field.signed() ? -max - 1 : 0, max);
        spot.close();
        return new FrameLayout.Constant(field, value);
    }

    private static Checksum checksum(JsonSpot spot, int minBytes) {
        Checksum.Kind kind =
                spot.member("kind", "one of sum8, xor8, crc8, crc16").choice(KINDS, Checksum.Kind.SUM_8);
        int offset = (int) spot.member("byte", "a byte offset, negative from the end of the frame")
                .integer(-minBytes, minBytes - 1);
        BitField.Order order =
                spot.optional("order").map(s -> s.choice(ORDERS, Order.LITTLE)).orElse(Order.LITTLE);
        BitField field = new BitField(Math.max(offset, 0) * 8, kind.widthBits(), order, false);
        int room = offset < 0 ? -offset : minBytes - offset;
        if (room * 8 < kind.widthBits()) {
            spot.expected("room for " + kind.widthBits() + " bits of check within the frame");
        }
        int from = (int) spot.member("from", "the first byte covered").integer(0, minBytes - 1);
        int to = (int) spot.member("to", "the first byte not covered, 0 or negative from the end of the frame")
                .integer(-minBytes, minBytes);
        if (to <= 0 ? minBytes + to <= from : to <= from) {
            spot.expected(
                    "a range of at least one byte; from " + from + " to " + to + " is empty in a frame of " + minBytes);
        }
        Checksum.Crc crc = crc(spot, kind);
        spot.close();
        return new Checksum(kind, field, Math.max(-offset, 0), from, to, crc);
    }

    private static Checksum.Crc crc(JsonSpot spot, Checksum.Kind kind) {
        if (kind != Checksum.Kind.CRC_8 && kind != Checksum.Kind.CRC_16) {
            int start = (int)
                    (long) spot.optional("initial").map(s -> s.integer(0, 0xFF)).orElse(0L);
            return new Checksum.Crc(0, start, false, 0);
        }
        long max = (1L << kind.widthBits()) - 1;
        long polynomial = spot.member("polynomial", "the polynomial without its leading one")
                .integer(1, max);
        long initial = spot.optional("initial").map(s -> s.integer(0, max)).orElse(0L);
        boolean reflected = spot.optional("reflected").map(JsonSpot::flag).orElse(false);
        long finalXor = spot.optional("finalXor").map(s -> s.integer(0, max)).orElse(0L);
        return new Checksum.Crc((int) polynomial, (int) initial, reflected, (int) finalXor);
    }
}
