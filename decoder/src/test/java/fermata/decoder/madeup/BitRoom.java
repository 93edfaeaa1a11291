package fermata.decoder.madeup;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import java.util.random.RandomGenerator;

/** Hands out the bits of a frame one field after another, now and then from the next whole byte on. */
final class BitRoom {
    private final Order order;
    private final RandomGenerator random;
    private final boolean onBytes;
    private int next;

    BitRoom(Order order, boolean onBytes, RandomGenerator random) {
        this.order = order;
        this.onBytes = onBytes;
        this.random = random;
    }

    /** A field of this width; a whole number of bytes may have the other order, since it covers the same bits. */
    BitField take(int widthBits) {
        if (onBytes || random.nextInt(4) == 0) {
            toNextByte();
        } else if (random.nextInt(5) == 0) {
            next += random.nextInt(4);
        }
        boolean whole = next % 8 == 0 && widthBits % 8 == 0 && widthBits > 8;
        Order own = whole && random.nextInt(4) == 0 ? other() : order;
        BitField field = new BitField(next, widthBits, own, false);
        next += widthBits;
        return field;
    }

    /** Bits that lie together, in the frame's order and right here. */
    BitField takeHere(int widthBits) {
        BitField field = new BitField(next, widthBits, order, false);
        next += widthBits;
        return field;
    }

    /** Leaves bits out. */
    void skip(int bits) {
        next += bits;
    }

    void toNextByte() {
        next = bytes() * 8;
    }

    int bits() {
        return next;
    }

    int bytes() {
        return (next + 7) / 8;
    }

    private Order other() {
        return order == Order.BIG ? Order.LITTLE : Order.BIG;
    }
}
