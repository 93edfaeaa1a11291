package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntUnaryOperator;

/** Finds a small field whose value is known for each frame: how many turns are new, or how many a history holds. */
final class TallySearch {
    private static final int WIDEST = 8;

    /** What is unlike most may be a lost frame in one case of four. */
    private static final double UNUSUAL_WRONG = 0.25;

    private final int frameBytes;
    private final List<Heard> frames;
    private final BitSet taken;

    TallySearch(int frameBytes, List<Heard> distinct, BitSet taken) {
        this.frameBytes = frameBytes;
        this.frames = distinct;
        this.taken = taken;
    }

    /**
     * The narrowest field that has the value for all frames but a few.
     *
     * @param expected value for each frame, below 0 if it is not known
     * @param most frames that may have another value
     */
    Optional<BitField> find(IntUnaryOperator expected, int most) {
        int usual = usual(expected);
        int highest = 0;
        boolean varies = false;
        int first = -1;
        for (int i = 0; i < frames.size(); i++) {
            int value = expected.applyAsInt(i);
            highest = Math.max(highest, value);
            first = first < 0 ? value : first;
            varies |= value >= 0 && value != first;
        }
        for (int width = 32 - Integer.numberOfLeadingZeros(highest); varies && width <= WIDEST; width++) {
            for (Order order : Order.values()) {
                for (int at = 0; at + width <= frameBytes * 8; at++) {
                    BitField field = new BitField(at, width, order, false);
                    if (!BitPlace.covered(field).intersects(taken) && holds(field, expected, usual, most)) {
                        return Optional.of(field);
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** The same field wide enough for a number, as far as the bits above it belong to nothing and stay zero. */
    BitField widened(BitField narrow, int number) {
        BitField widest = narrow;
        while (widest.allOnes() < number) {
            int width = widest.widthBits() + 1;
            int lsb = BitPlace.lsb(narrow);
            if (!BitPlace.fits(narrow.order(), lsb, width, frameBytes)) {
                return widest;
            }
            BitField next = BitPlace.above(narrow.order(), lsb, width);
            long top = 1L << (width - 1);
            boolean isFree = !BitPlace.covered(next).intersects(taken)
                    && frames.stream().allMatch(f -> (next.read(f.bytes()) & top) == 0);
            if (!isFree) {
                return widest;
            }
            widest = next;
        }
        return widest;
    }

    private int usual(IntUnaryOperator expected) {
        Map<Integer, Integer> counts = new HashMap<>();
        for (int i = 0; i < frames.size(); i++) {
            counts.merge(expected.applyAsInt(i), 1, Integer::sum);
        }
        return counts.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElse(0);
    }

    /** Of the frames that are unlike most, as many must agree: a field that never moves agrees with most. */
    private boolean holds(BitField field, IntUnaryOperator expected, int usual, int most) {
        int wrong = 0;
        int unusual = 0;
        int unusualWrong = 0;
        for (int i = 0; i < frames.size(); i++) {
            int value = expected.applyAsInt(i);
            boolean isWrong = value >= 0 && field.read(frames.get(i).bytes()) != value;
            wrong += isWrong ? 1 : 0;
            unusual += value >= 0 && value != usual ? 1 : 0;
            unusualWrong += isWrong && value != usual ? 1 : 0;
            if (wrong > most) {
                return false;
            }
        }
        return unusualWrong <= unusual * UNUSUAL_WRONG;
    }
}
