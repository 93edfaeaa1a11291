package fermata.decoder.stream.profile;

import java.util.List;
import java.util.stream.Stream;

/**
 * Where the code of a turn stands: in one field, or in several, such as one for the face and one for the direction. The
 * values of several are put together to one number, the first the most significant.
 *
 * @param parts one field of any sign, or up to four without a sign of together at most 48 bits
 */
public record TurnCode(List<BitField> parts) {
    /** Face, direction, and what else a device may set apart. */
    static final int MAX_PARTS = 4;

    public TurnCode {
        parts = List.copyOf(parts);
        int width = parts.stream().mapToInt(BitField::widthBits).sum();
        boolean signed = parts.size() > 1 && parts.stream().anyMatch(BitField::signed);
        if (parts.isEmpty() || parts.size() > MAX_PARTS || width > BitField.MAX_WIDTH_BITS || signed) {
            throw new IllegalArgumentException("a code in " + parts.size() + " parts of " + width
                    + " bits is not 1.." + MAX_PARTS + " parts of together 1.." + BitField.MAX_WIDTH_BITS
                    + " bits, without a sign if there are several");
        }
    }

    /** A code in these fields. */
    public static TurnCode of(BitField... parts) {
        return new TurnCode(Stream.of(parts).toList());
    }

    /** Its value in a frame that is long enough. */
    public long read(byte[] frame) {
        if (parts.size() == 1) {
            return parts.get(0).read(frame);
        }
        long value = 0;
        for (BitField part : parts) {
            value = value << part.widthBits() | part.read(frame);
        }
        return value;
    }

    /** The same code {@code bits} further on. */
    public TurnCode shifted(int bits) {
        return new TurnCode(parts.stream().map(part -> part.shifted(bits)).toList());
    }

    /** Width of the code in bits, all parts together. */
    public int widthBits() {
        return parts.stream().mapToInt(BitField::widthBits).sum();
    }

    /** First bit after the last of its fields. */
    public int endBits() {
        return parts.stream().mapToInt(BitField::endBits).max().orElseThrow();
    }

    /** First byte that it touches. */
    public int firstByte() {
        return parts.stream().mapToInt(BitField::firstByte).min().orElseThrow();
    }

    /** Whether it may be below zero. */
    public boolean signed() {
        return parts.size() == 1 && parts.get(0).signed();
    }

    /** Largest code if unsigned: all ones. */
    public long allOnes() {
        return (1L << widthBits()) - 1;
    }
}
