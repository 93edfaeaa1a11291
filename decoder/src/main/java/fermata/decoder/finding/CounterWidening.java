package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;
import java.util.BitSet;
import java.util.List;

/** Widens a counter upwards as long as the next bit moves, and moves as a carry would. Stateless. */
final class CounterWidening {
    /** A foreign bit moves just when a carry is due once by chance; a counter that is cut short only wraps sooner. */
    private static final int LEAST_MOVES = 2;

    private CounterWidening() {}

    /**
     * The counter as far up as its bits were seen to move.
     *
     * @param narrow its lowest bits
     * @param steps by how much it rose since the first frame, at each frame
     * @param taken bits that belong to something else
     */
    static BitField widened(BitField narrow, long[] steps, List<Heard> frames, int frameBytes, BitSet taken) {
        BitField widest = narrow;
        while (widest.widthBits() < BitField.MAX_WIDTH_BITS) {
            int width = widest.widthBits() + 1;
            int lsb = BitPlace.lsb(narrow);
            if (!BitPlace.fits(narrow.order(), lsb, width, frameBytes)) {
                return widest;
            }
            BitField next = BitPlace.above(narrow.order(), lsb, width);
            if (BitPlace.covered(next).intersects(taken) || !carries(next, steps, frames)) {
                return widest;
            }
            widest = next;
        }
        return widest;
    }

    private static boolean carries(BitField field, long[] steps, List<Heard> frames) {
        long first = field.read(frames.get(0).bytes());
        int moves = 0;
        long top = first >> field.widthBits() - 1;
        for (int i = 0; i < frames.size(); i++) {
            long value = field.read(frames.get(i).bytes());
            if (value != (first + steps[i] & field.allOnes())) {
                return false;
            }
            moves += value >> field.widthBits() - 1 != top ? 1 : 0;
            top = value >> field.widthBits() - 1;
        }
        return moves >= LEAST_MOVES;
    }
}
