package fermata.decoder.madeup;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.Checksum;
import java.util.List;
import java.util.random.RandomGenerator;

/** Draws checks of every kind, or none, over the bytes before the last or all but the first as well. */
final class CheckMaker {
    private CheckMaker() {}

    /** Places a check behind what was laid out. */
    static List<Checksum> behind(BitRoom room, boolean hasTag, RandomGenerator random) {
        int drawn = random.nextInt(20);
        if (drawn < 7) {
            return List.of();
        }
        room.toNextByte();
        int end = room.bytes();
        int from = hasTag && random.nextInt(4) == 0 ? 1 : 0;
        Checksum.Kind kind = drawn < 10
                ? Checksum.Kind.SUM_8
                : drawn < 13 ? Checksum.Kind.XOR_8 : drawn < 17 ? Checksum.Kind.CRC_8 : Checksum.Kind.CRC_16;
        BitField.Order order = random.nextBoolean() ? BitField.Order.BIG : BitField.Order.LITTLE;
        BitField place = new BitField(end * 8, kind.widthBits(), order, false);
        room.takeHere(kind.widthBits());
        return List.of(new Checksum(kind, place, 0, from, end, parameters(kind, random)));
    }

    private static Checksum.Crc parameters(Checksum.Kind kind, RandomGenerator random) {
        int mask = (1 << kind.widthBits()) - 1;
        boolean isCrc = kind == Checksum.Kind.CRC_8 || kind == Checksum.Kind.CRC_16;
        int initial = random.nextBoolean() ? 0 : random.nextInt() & mask;
        return isCrc
                ? new Checksum.Crc(
                        random.nextInt() & mask | 1,
                        initial,
                        random.nextBoolean(),
                        random.nextBoolean() ? 0 : random.nextInt() & mask)
                : new Checksum.Crc(0, initial, false, 0);
    }
}
