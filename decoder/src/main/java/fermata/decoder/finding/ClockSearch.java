package fermata.decoder.finding;

import fermata.decoder.clock.TurnClock;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * Finds the clock: eight bits that keep step with the arrivals ({@link Tone}), the lowest such eight, and all bits
 * above them that move as its carries do. Its tick follows from its frequency. Cost: a tone for each place of eight
 * bits that takes many values; a tenth of a second or two.
 */
final class ClockSearch {
    private static final int WINDOW = 8;

    /** Delays of 50 ms blur the shortest tone that is looked for, 0.2 s, to 0.85 at most when spread evenly. */
    private static final double LEAST_COHERENCE = 0.8;

    /** Eight bits that take fewer values are no low bits of a clock. */
    private static final int LEAST_VALUES = 24;

    /** Clocks of cheap devices are set by whole parts of these, or of a watch crystal. */
    private static final double[] ROUND_MICROS = {250, 1e6 / 32768};

    /** Crystals of cheap devices stay well within. */
    private static final double ROUND_WITHIN = 100e-6;

    private final int frameBytes;
    private final List<Heard> frames;
    private final BitSet taken;
    private final double[] seconds;

    ClockSearch(int frameBytes, List<Heard> distinct, BitSet taken) {
        this.frameBytes = frameBytes;
        this.frames = distinct;
        this.taken = taken;
        this.seconds = distinct.stream().mapToDouble(f -> f.micros() / 1e6).toArray();
    }

    Optional<ClockFound> find() {
        Optional<BitField> lowest = Optional.empty();
        double highest = 0;
        for (Order order : Order.values()) {
            for (int lsb = 0; lsb < frameBytes * 8; lsb++) {
                if (!BitPlace.fits(order, lsb, WINDOW, frameBytes)) {
                    continue;
                }
                BitField window = BitPlace.above(order, lsb, WINDOW);
                if (BitPlace.covered(window).intersects(taken) || values(window) < LEAST_VALUES) {
                    continue;
                }
                Tone tone = Tone.of(turns(window), seconds);
                boolean isHigher = tone.hertz() > highest * 1.01
                        || tone.hertz() > highest * 0.99 && lowest.isPresent() && isWider(window, lowest.get(), tone);
                if (tone.coherence() >= LEAST_COHERENCE && isHigher) {
                    lowest = Optional.of(window);
                    highest = tone.hertz();
                }
            }
        }
        return lowest.map(this::finished);
    }

    /** Eight bits of one byte read the same in either order: the bits above tell which it is. */
    private boolean isWider(BitField window, BitField other, Tone tone) {
        return widened(window, totals(window, tone)).widthBits()
                > widened(other, totals(other, Tone.of(turns(other), seconds))).widthBits();
    }

    private ClockFound finished(BitField window) {
        Tone tone = Tone.of(turns(window), seconds);
        long[] totals = totals(window, tone);
        double tick = rounded(underArrivals(totals, 1e6 / (tone.hertz() * (1 << WINDOW))));
        BitField field = widened(window, totals);
        long above = field.read(frames.get(0).bytes()) - totals[0];
        for (int i = 0; i < totals.length; i++) {
            totals[i] += above;
        }
        return new ClockFound(field, tick, totals, spread(totals, tick));
    }

    private BitField widened(BitField window, long[] totals) {
        long[] steps = new long[totals.length];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = totals[i] - totals[0];
        }
        return CounterWidening.widened(window, steps, frames, frameBytes, taken);
    }

    private long values(BitField field) {
        return frames.stream().mapToLong(f -> field.read(f.bytes())).distinct().count();
    }

    private double[] turns(BitField window) {
        return frames.stream()
                .mapToDouble(f -> (window.read(f.bytes()) + 0.5) / (1 << WINDOW))
                .toArray();
    }

    /** Ticks that are nearest to what the tone says and end in what the window reads. */
    private long[] totals(BitField window, Tone tone) {
        double[] turns = turns(window);
        long first = window.read(frames.get(0).bytes());
        long rounds = Math.round(tone.hertz() * seconds[0] + tone.phase() - turns[0]);
        long[] totals = new long[turns.length];
        for (int i = 0; i < turns.length; i++) {
            long own = Math.round(tone.hertz() * seconds[i] + tone.phase() - turns[i]) - rounds;
            totals[i] = (own << WINDOW) + window.read(frames.get(i).bytes());
        }
        totals[0] = first;
        return totals;
    }

    private double spread(long[] totals, double tick) {
        double[] offsets = new double[totals.length];
        for (int i = 0; i < offsets.length; i++) {
            offsets[i] = frames.get(i).micros() - totals[i] * tick;
        }
        Arrays.sort(offsets);
        return offsets[offsets.length * 3 / 4] - offsets[offsets.length / 4];
    }

    /** A notification is late, never early: the line under the arrivals has the clock's pace, not one through them. */
    private double underArrivals(long[] totals, double tick) {
        TurnClock clock = new TurnClock(frames.get(0).micros());
        for (int i = 0; i < totals.length; i++) {
            clock.add(Math.round((totals[i] - totals[0]) * tick), frames.get(i).micros());
        }
        return clock.fit().map(fit -> tick * (1 + fit.skewPpm() * 1e-6)).orElse(tick);
    }

    private static double rounded(double tick) {
        for (double unit : ROUND_MICROS) {
            double near = Math.round(tick / unit) * unit;
            if (near > 0 && Math.abs(tick / near - 1) < ROUND_WITHIN) {
                return near;
            }
        }
        return Math.round(tick * 1000) / 1000.0;
    }
}
