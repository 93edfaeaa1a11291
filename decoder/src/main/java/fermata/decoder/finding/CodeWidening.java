package fermata.decoder.finding;

import fermata.decoder.cube.Turn;
import fermata.decoder.finding.Lesson.Example;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.TurnCode;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Widens a code to all bits beside it that the turn decides: twelve codes of eight bits may differ in four of them, and
 * the others tell a half turn apart that no example showed.
 */
final class CodeWidening {
    /** Bits within a code that no turn moves; more of them are a gap between fields. */
    private static final int MOST_STILL = 2;

    /** Of the half turns; some come as two quarters. */
    private static final double MOST_HALVES = 0.6;

    private final int frameBytes;
    private final List<Example> asAsked;
    private final BitSet taken;
    private final List<Example> halves;
    private final List<Heard> after;

    /**
     * Outside of bits that are taken.
     *
     * @param asAsked single turns that are as they were asked for
     * @param halves the frames of half turns
     * @param after frames of quarter turns that came after those
     */
    CodeWidening(int frameBytes, List<Example> asAsked, BitSet taken, List<Example> halves, List<Heard> after) {
        this.halves = halves;
        this.after = after;
        this.taken = taken;
        this.frameBytes = frameBytes;
        this.asAsked = asAsked;
    }

    TurnCode widened(TurnCode narrow) {
        List<BitField> parts = new ArrayList<>();
        for (BitField part : narrow.parts()) {
            parts.add(widened(part, narrow, parts));
        }
        return new TurnCode(parts);
    }

    private BitField widened(BitField part, TurnCode narrow, List<BitField> done) {
        int from = part.offsetBits();
        int to = part.endBits();
        for (int at = from - 1; at >= 0 && from - at <= MOST_STILL + 1; at--) {
            if (isTaken(at, part, narrow, done) || !isDecided(bit(at, part))) {
                break;
            }
            from = varies(bit(at, part)) ? at : from;
        }
        for (int at = to; at < frameBytes * 8 && at - to <= MOST_STILL; at++) {
            if (isTaken(at, part, narrow, done) || !isDecided(bit(at, part))) {
                break;
            }
            to = varies(bit(at, part)) ? at + 1 : to;
        }
        return new BitField(from, to - from, part.order(), false);
    }

    private static BitField bit(int at, BitField part) {
        return new BitField(at, 1, part.order(), false);
    }

    /** Whether a bit belongs to another part already. */
    private boolean isTaken(int at, BitField part, TurnCode narrow, List<BitField> done) {
        var bits = BitPlace.covered(bit(at, part));
        return bits.intersects(taken)
                || narrow.parts().stream()
                        .anyMatch(other -> !other.equals(part) && bits.intersects(BitPlace.covered(other)))
                || done.stream().anyMatch(other -> bits.intersects(BitPlace.covered(other)));
    }

    private boolean isDecided(BitField bit) {
        Map<Turn, Long> values = new HashMap<>();
        return asAsked.stream().allMatch(example -> {
            long value = bit.read(example.frame().bytes());
            Long known = values.putIfAbsent(example.asked(), value);
            return known == null || known == value;
        });
    }

    private boolean varies(BitField bit) {
        long first = bit.read(asAsked.get(0).frame().bytes());
        return asAsked.stream().anyMatch(e -> bit.read(e.frame().bytes()) != first) || tellsHalves(bit, first);
    }

    /** A bit that quarter turns leave still may be the one that tells a half turn: it moves with most, and back. */
    private boolean tellsHalves(BitField bit, long still) {
        long moved = halves.stream()
                .filter(e -> bit.read(e.frame().bytes()) != still)
                .count();
        return !after.isEmpty()
                && moved >= MOST_HALVES * halves.size()
                && moved > 0
                && after.stream().allMatch(frame -> bit.read(frame.bytes()) == still);
    }
}
