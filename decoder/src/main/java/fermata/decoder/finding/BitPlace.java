package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import fermata.decoder.stream.profile.TurnCode;
import java.util.BitSet;

/** Fields by where their least significant bit stands, and the bits that they cover. Stateless. */
final class BitPlace {
    private BitPlace() {}

    /** The field of this width whose least significant bit is bit {@code lsb} as its order counts. */
    static BitField above(Order order, int lsb, int widthBits) {
        return new BitField(order == Order.BIG ? lsb - widthBits + 1 : lsb, widthBits, order, false);
    }

    /** Whether such a field lies within a frame. */
    static boolean fits(Order order, int lsb, int widthBits, int frameBytes) {
        return order == Order.BIG
                ? lsb - widthBits + 1 >= 0 && lsb < frameBytes * 8
                : lsb + widthBits <= frameBytes * 8;
    }

    /** The same bits read in the other order, if they lie in one byte: there both read the same number. */
    static BitField inOtherOrder(BitField field) {
        boolean isOneByte = field.firstByte() == (field.endBits() - 1) / 8;
        if (!isOneByte) {
            return field;
        }
        Order other = field.order() == Order.BIG ? Order.LITTLE : Order.BIG;
        return above(other, lsb(field) ^ 7, field.widthBits());
    }

    /** Where the least significant bit of a field stands. */
    static int lsb(BitField field) {
        return field.order() == Order.BIG ? field.endBits() - 1 : field.offsetBits();
    }

    /** The bits that a field covers, whatever its order: 8 a byte, the least significant first. */
    static BitSet covered(BitField field) {
        BitSet bits = new BitSet();
        for (int at = field.offsetBits(); at < field.endBits(); at++) {
            bits.set(field.order() == Order.BIG ? at ^ 7 : at);
        }
        return bits;
    }

    /** The bits that a code covers. */
    static BitSet covered(TurnCode code) {
        BitSet bits = new BitSet();
        code.parts().forEach(part -> bits.or(covered(part)));
        return bits;
    }
}
