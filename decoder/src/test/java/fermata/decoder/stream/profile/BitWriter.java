package fermata.decoder.stream.profile;

import fermata.decoder.stream.profile.BitField.Order;

/** What a device does with a field: the other direction of reading, for tests. */
public final class BitWriter {
    private BitWriter() {}

    /** Writes the low bits of {@code value} into a frame that is long enough. */
    public static void write(BitField field, byte[] frame, long value) {
        for (int i = 0; i < field.widthBits(); i++) {
            int at = field.offsetBits() + i;
            boolean big = field.order() == Order.BIG;
            int place = big ? 7 - (at & 7) : at & 7;
            long bit = value >> (big ? field.widthBits() - 1 - i : i) & 1;
            frame[at >> 3] = (byte) (frame[at >> 3] & ~(1 << place) | (int) bit << place);
        }
    }
}
