package fermata.decoder.madeup;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import fermata.decoder.stream.profile.TurnCode;

/** Writes fields: what BitField reads. */
final class Bits {
    private Bits() {}

    static void put(byte[] frame, BitField field, long value) {
        for (int i = 0; i < field.widthBits(); i++) {
            int at = field.offsetBits() + i;
            boolean big = field.order() == Order.BIG;
            long bit = big ? value >> (field.widthBits() - 1 - i) & 1 : value >> i & 1;
            int mask = big ? 0x80 >> (at & 7) : 1 << (at & 7);
            frame[at >> 3] = (byte) (bit == 1 ? frame[at >> 3] | mask : frame[at >> 3] & ~mask);
        }
    }

    static void put(byte[] frame, TurnCode code, long value) {
        long rest = value;
        for (int i = code.parts().size() - 1; i >= 0; i--) {
            BitField part = code.parts().get(i);
            put(frame, part, rest & part.allOnes());
            rest >>= part.widthBits();
        }
    }
}
