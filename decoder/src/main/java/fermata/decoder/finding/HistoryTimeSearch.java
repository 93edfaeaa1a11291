package fermata.decoder.finding;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import fermata.decoder.stream.profile.FrameLayout.HistoryTime;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Finds the times in a history's entries: the clock as it stood at the frame before, or the ticks between it and the
 * newest turn. They also tell how fine the clock is: bits below it are no time.
 */
final class HistoryTimeSearch {
    private static final int NARROWEST = 4;
    private static final int WIDEST = 32;
    private static final int LEAST_FRAMES = 40;

    /** Entries may stand elsewhere until a device that just started has filled them. */
    private static final int UNFILLED = 12;

    /** Bits below the clock that may have been taken for it: delays of a radio hide what is shorter. */
    private static final int MOST_BELOW = 4;

    /**
     * What was found.
     *
     * @param below bits of the clock that are none of it
     * @param field the time of the entry one turn back
     * @param isDifference whether it is the ticks between it and the newest turn
     * @param saturates whether all ones mean that many or more
     */
    record TimeFound(int below, BitField field, boolean isDifference, boolean saturates) {
        /** The same for entry 0, which lies {@code shiftBits} from the entry one turn back. */
        HistoryTime at(int shiftBits) {
            BitField first = field.shifted(shiftBits);
            return isDifference ? new HistoryTime.BeforeNewer(first, saturates) : new HistoryTime.Absolute(first);
        }
    }

    private final ClockFound clock;
    private final List<Heard> frames;
    private final Steps steps;
    private final int frameBytes;
    private final BitSet taken;

    HistoryTimeSearch(ClockFound clock, List<Heard> distinct, Steps steps, int frameBytes, BitSet taken) {
        this.clock = clock;
        this.frames = distinct;
        this.steps = steps;
        this.frameBytes = frameBytes;
        this.taken = taken;
    }

    Optional<TimeFound> find() {
        Optional<TimeFound> widest = Optional.empty();
        for (int below = 0; below <= MOST_BELOW && widest.isEmpty(); below++) {
            for (Order order : Order.values()) {
                for (int lsb = 0; lsb < frameBytes * 8; lsb++) {
                    Optional<TimeFound> found = at(order, lsb, below);
                    boolean isWider = found.isPresent()
                            && (widest.isEmpty()
                                    || found.get().field().widthBits()
                                            > widest.get().field().widthBits());
                    widest = isWider ? found : widest;
                }
            }
        }
        return widest;
    }

    /** The widest field with this lowest bit. */
    private Optional<TimeFound> at(Order order, int lsb, int below) {
        Optional<TimeFound> widest = Optional.empty();
        int most = Math.min(WIDEST, clock.field().widthBits() - below);
        for (int width = NARROWEST; width <= most && BitPlace.fits(order, lsb, width, frameBytes); width++) {
            BitField field = BitPlace.above(order, lsb, width);
            if (BitPlace.covered(field).intersects(taken)) {
                return widest;
            }
            if (holds(field, below, false, false)) {
                widest = Optional.of(new TimeFound(below, field, false, false));
            } else if (holds(field, below, true, true)) {
                widest = Optional.of(new TimeFound(below, field, true, true));
            }
        }
        return widest;
    }

    private boolean holds(BitField field, int below, boolean isDifference, boolean saturates) {
        int met = 0;
        long first = -1;
        boolean varies = false;
        for (int i = 1; i < frames.size(); i++) {
            if (!steps.lead(i, 1)) {
                continue;
            }
            long before = clock.totals()[i - 1] >> below;
            long difference = (clock.totals()[i] >> below) - before;
            long expected = !isDifference
                    ? before & field.allOnes()
                    : saturates ? Math.min(difference, field.allOnes()) : difference & field.allOnes();
            if (i > UNFILLED && field.read(frames.get(i).bytes()) != expected) {
                return false;
            }
            varies |= met > 0 && expected != first;
            first = expected;
            met++;
        }
        return met >= LEAST_FRAMES && varies;
    }
}
