package fermata.decoder.stream.profile;

import java.util.Objects;

/**
 * A check over the bytes {@code from} (inclusive) to {@code to} (exclusive) of a frame.
 *
 * @param kind how it is computed
 * @param field where it stands; its width is that of the kind
 * @param backBytes 0: the field counts from the frame's start; else from that many bytes before its end
 * @param from first byte covered
 * @param to first byte not covered; 0 or less counts back from the frame's end
 * @param crc parameters of a CRC; of them, sum and xor use only what they start from
 */
public record Checksum(Kind kind, BitField field, int backBytes, int from, int to, Crc crc) {
    /** Ways to compute it, all 8 bits wide but the last. */
    public enum Kind {
        SUM_8(8),
        XOR_8(8),
        CRC_8(8),
        CRC_16(16);

        private final int widthBits;

        Kind(int widthBits) {
            this.widthBits = widthBits;
        }

        /** Width of the result. */
        public int widthBits() {
            return widthBits;
        }
    }

    /**
     * Parameters after Williams 1993, "A painless guide to CRC error detection algorithms".
     *
     * @param polynomial without its leading one, most significant bit first
     * @param initial register before the first byte
     * @param reflected bytes enter and the register leaves least significant bit first
     * @param finalXor applied to the result
     */
    public record Crc(int polynomial, int initial, boolean reflected, int finalXor) {}

    public Checksum {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(field, "field");
        Objects.requireNonNull(crc, "crc");
        if (field.widthBits() != kind.widthBits) {
            throw new IllegalArgumentException(
                    kind + " needs a field of " + kind.widthBits + " bits, not " + field.widthBits());
        }
    }

    /** Where the check stands in a frame of this length. */
    public BitField fieldIn(int frameLength) {
        return backBytes == 0 ? field : field.shifted((frameLength - backBytes) * 8);
    }

    /** First byte not covered in a frame of this length. */
    public int end(int frameLength) {
        return to > 0 ? to : frameLength + to;
    }

    /** The check of a frame, which must reach to the end of the range. O(bytes). */
    public long compute(byte[] frame) {
        int value = crc.initial;
        int end = end(frame.length);
        for (int i = from; i < end; i++) {
            int octet = frame[i] & 0xFF;
            value = switch (kind) {
                case SUM_8 -> value + octet & 0xFF;
                case XOR_8 -> value ^ octet;
                case CRC_8, CRC_16 -> crcStep(value, octet);
            };
        }
        if (kind == Kind.SUM_8 || kind == Kind.XOR_8) {
            return value;
        }
        return (crc.reflected ? reverse(value, kind.widthBits) : value) ^ crc.finalXor;
    }

    private int crcStep(int register, int octet) {
        int width = kind.widthBits;
        int top = 1 << (width - 1);
        int value = register ^ (crc.reflected ? reverse(octet, 8) : octet) << (width - 8);
        for (int bit = 0; bit < 8; bit++) {
            value = (value & top) != 0 ? value << 1 ^ crc.polynomial : value << 1;
        }
        return value & (1 << width) - 1;
    }

    private static int reverse(int value, int width) {
        return Integer.reverse(value) >>> (32 - width);
    }
}
