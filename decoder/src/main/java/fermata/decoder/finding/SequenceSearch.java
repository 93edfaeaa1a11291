package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Finds the number of the newest turn: what rises by one from frame to frame, or by a few where some are lost. */
final class SequenceSearch {
    private static final int NARROWEST = 4;
    /** A frame that is a few turns ahead of the one before it; more would be a long loss. */
    private static final int FEW = 6;

    /** Of all steps; the others come after a longer loss. */
    private static final double SMALL_STEPS = 0.97;

    /** Of all steps; where a frame carries several new turns, those of single turns still rise by one. */
    private static final double STEPS_OF_ONE = 0.6;

    private final int frameBytes;
    private final List<Heard> frames;
    private final BitSet taken;

    SequenceSearch(int frameBytes, List<Heard> distinct, BitSet taken) {
        this.frameBytes = frameBytes;
        this.frames = distinct;
        this.taken = taken;
    }

    Optional<CounterFound> find() {
        Optional<CounterFound> widest = Optional.empty();
        for (Order order : Order.values()) {
            for (int lsb = 0; lsb < frameBytes * 8; lsb++) {
                if (!BitPlace.fits(order, lsb, NARROWEST, frameBytes)) {
                    continue;
                }
                BitField narrow = BitPlace.above(order, lsb, NARROWEST);
                if (BitPlace.covered(narrow).intersects(taken) || !counts(narrow)) {
                    continue;
                }
                long[] totals = totals(narrow);
                BitField field = CounterWidening.widened(narrow, totals, frames, frameBytes, taken);
                if (widest.isEmpty() || field.widthBits() > widest.get().field().widthBits()) {
                    widest = Optional.of(new CounterFound(field, totals));
                }
            }
        }
        return widest;
    }

    private boolean counts(BitField narrow) {
        int small = 0;
        int ones = 0;
        for (int i = 1; i < frames.size(); i++) {
            long step = step(narrow, i);
            small += step >= 1 && step <= FEW ? 1 : 0;
            ones += step == 1 ? 1 : 0;
        }
        int steps = frames.size() - 1;
        return steps > 0 && small >= SMALL_STEPS * steps && ones >= STEPS_OF_ONE * steps;
    }

    private long step(BitField narrow, int index) {
        long before = narrow.read(frames.get(index - 1).bytes());
        return narrow.read(frames.get(index).bytes()) - before & narrow.allOnes();
    }

    private long[] totals(BitField narrow) {
        long[] totals = new long[frames.size()];
        for (int i = 1; i < totals.length; i++) {
            totals[i] = totals[i - 1] + step(narrow, i);
        }
        return totals;
    }
}
