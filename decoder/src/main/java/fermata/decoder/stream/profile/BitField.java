package fermata.decoder.stream.profile;

import java.util.Objects;

/**
 * A number in a frame.
 *
 * <p>With {@link Order#BIG} bit 0 is the most significant bit of byte 0 and the field's first bit is its most
 * significant; with {@link Order#LITTLE} bit 0 is the least significant bit of byte 0 and the field's first bit is its
 * least significant. For whole bytes that is the usual big and little endian.
 *
 * @param offsetBits first bit
 * @param widthBits 1..48
 * @param order which end comes first
 * @param signed two's complement
 */
public record BitField(int offsetBits, int widthBits, Order order, boolean signed) {
    /** Largest width of a field: enough for a microsecond clock of nine years, and sums stay within a long. */
    public static final int MAX_WIDTH_BITS = 48;

    /** Which end comes first. */
    public enum Order {
        BIG,
        LITTLE
    }

    public BitField {
        Objects.requireNonNull(order, "order");
        if (offsetBits < 0 || widthBits < 1 || widthBits > MAX_WIDTH_BITS) {
            throw new IllegalArgumentException("a field of " + widthBits + " bits at bit " + offsetBits + " is not 1.."
                    + MAX_WIDTH_BITS + " bits at 0 or later");
        }
    }

    /** First bit after the field. */
    public int endBits() {
        return offsetBits + widthBits;
    }

    /** First byte the field touches. */
    public int firstByte() {
        return offsetBits / 8;
    }

    /** Largest value if unsigned: all ones. */
    public long allOnes() {
        return (1L << widthBits) - 1;
    }

    /** The same field {@code bits} further on. */
    public BitField shifted(int bits) {
        return new BitField(offsetBits + bits, widthBits, order, signed);
    }

    /** Its value in a frame that is long enough. O(width). */
    public long read(byte[] frame) {
        long value = 0;
        for (int i = 0; i < widthBits; i++) {
            int at = offsetBits + i;
            if (order == Order.BIG) {
                value = value << 1 | (frame[at >> 3] >> (7 - (at & 7)) & 1);
            } else {
                value |= (long) (frame[at >> 3] >> (at & 7) & 1) << i;
            }
        }
        boolean negative = signed && (value >> (widthBits - 1) & 1) == 1;
        return negative ? value - (1L << widthBits) : value;
    }
}
