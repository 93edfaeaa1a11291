package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import fermata.decoder.stream.profile.Checksum;
import fermata.decoder.stream.profile.Checksum.Crc;
import fermata.decoder.stream.profile.Checksum.Kind;
import java.util.List;
import java.util.Optional;

/**
 * Finds the check of frames of one length, by solving for its parameters. Sums are what is left when the bytes covered
 * are taken away. A CRC is linear: the differences of two frames and of their checks, as one polynomial, are a multiple
 * of the generator, so the generator is what all those multiples have in common. Where a check starts and what it is
 * finally mixed with is one constant in frames of one length.
 */
final class CheckSearch {
    /** A check byte is right by chance once in 256 frames, so that twelve leave no doubt. */
    private static final int LEAST_FRAMES = 12;

    /** A check leaves out a leading byte or two, if any. */
    private static final int MOST_LEFT_OUT = 6;

    private final int length;
    private final List<byte[]> frames;

    CheckSearch(int length, List<Heard> distinct) {
        this.length = length;
        this.frames = distinct.stream().map(Heard::bytes).toList();
    }

    /** The check that covers most, if all frames agree with one. */
    Optional<Checksum> find() {
        if (frames.size() < LEAST_FRAMES) {
            return Optional.empty();
        }
        for (int place = length - 1; place >= 1; place--) {
            for (int from = 0; from < Math.min(place - 1, MOST_LEFT_OUT); from++) {
                Optional<Checksum> found = at(place, from, place);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return behind();
    }

    /** A check in front of what it covers. */
    private Optional<Checksum> behind() {
        for (int place = 0; place < length - 1; place++) {
            Optional<Checksum> found = at(place, place + 1, length);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private Optional<Checksum> at(int place, int from, int to) {
        if (!varies(place) || to - from < 2) {
            return Optional.empty();
        }
        Optional<Checksum> sum = summed(Kind.XOR_8, place, from, to)
                .or(() -> summed(Kind.SUM_8, place, from, to))
                .or(() -> divided(Kind.CRC_8, Order.LITTLE, false, place, from, to))
                .or(() -> divided(Kind.CRC_8, Order.LITTLE, true, place, from, to));
        if (sum.isPresent() || place + 2 > length || from <= place && to > place || !varies(place + 1)) {
            return sum;
        }
        boolean isBefore = from == place + 1;
        int start = isBefore ? place + 2 : from;
        for (Order order : Order.values()) {
            for (boolean reflected : new boolean[] {false, true}) {
                Optional<Checksum> crc = divided(Kind.CRC_16, order, reflected, place, start, to);
                if (crc.isPresent()) {
                    return crc;
                }
            }
        }
        return Optional.empty();
    }

    /** A CRC moves all its bits; what leaves some still is another field. */
    private boolean allBitsMove(int place, int bytes) {
        for (int at = place; at < place + bytes; at++) {
            int moved = 0;
            for (byte[] frame : frames) {
                moved |= (frame[at] ^ frames.get(0)[at]) & 0xFF;
            }
            if (moved != 0xFF) {
                return false;
            }
        }
        return true;
    }

    private boolean varies(int place) {
        return frames.stream().mapToInt(f -> f[place]).distinct().limit(5).count() > 4;
    }

    private Optional<Checksum> summed(Kind kind, int place, int from, int to) {
        BitField field = new BitField(place * 8, 8, Order.LITTLE, false);
        Checksum plain = new Checksum(kind, field, 0, from, to, new Crc(0, 0, false, 0));
        byte[] first = frames.get(0);
        long initial = kind == Kind.XOR_8
                ? field.read(first) ^ plain.compute(first)
                : field.read(first) - plain.compute(first) & 0xFF;
        return proved(new Checksum(kind, field, 0, from, to, new Crc(0, (int) initial, false, 0)));
    }

    private Optional<Checksum> divided(Kind kind, Order order, boolean reflected, int place, int from, int to) {
        int width = kind.widthBits();
        if (!allBitsMove(place, width / 8)) {
            return Optional.empty();
        }
        Multiples multiples = new Multiples(width, order, reflected, place, from, to);
        Optional<Integer> generator = multiples.generator(frames);
        if (generator.isEmpty()) {
            return Optional.empty();
        }
        BitField field = new BitField(place * 8, width, order, false);
        Checksum plain = new Checksum(kind, field, 0, from, to, new Crc(generator.get(), 0, reflected, 0));
        long finalXor = field.read(frames.get(0)) ^ plain.compute(frames.get(0));
        return proved(new Checksum(kind, field, 0, from, to, new Crc(generator.get(), 0, reflected, (int) finalXor)));
    }

    private Optional<Checksum> proved(Checksum check) {
        boolean holds = frames.stream().allMatch(f -> check.field().read(f) == check.compute(f));
        return holds ? Optional.of(check) : Optional.empty();
    }
}
