package fermata.decoder.clock;

import java.util.Arrays;
import java.util.OptionalLong;

/**
 * The connection interval, found from arrivals alone: notifications leave only at connection events, so differences of
 * arrivals are near multiples of the interval. Without a device clock it is the error bound of every time: the turn was
 * made up to one interval before it arrived, more only if a packet was lost on the air or a frame held up.
 *
 * <p>For each interval the radio can use, the mean resultant length of the differences wrapped round it (Mardia and
 * Jupp 2000, "Directional Statistics", 2.3.1); the longest interval that is nearly as good as the best wins, since
 * every divisor fits as well. An even rhythm looks like a long interval, and few differences fit many intervals by
 * chance: intervals beyond the spread of the differences are not tried, and the fewer there are the better they must
 * fit. Costs up to 512 differences times 395 intervals, about 10 ms. Stateless.
 */
public final class ArrivalLattice {
    /** Intervals are multiples of 1.25 ms from 7.5 ms: Bluetooth Core Specification, Vol 6, Part B, 4.5.1. */
    static final long STEP_MICROS = 1_250;

    static final long MIN_MICROS = 7_500;
    /** Slower links exist, but nobody could turn on one. */
    static final long MAX_MICROS = 500_000;
    /** Longest difference used: beyond it clocks drift and jitter adds up. */
    private static final long MAX_DIFFERENCE_MICROS = 2_000_000;

    private static final int MAX_DIFFERENCES = 512;
    private static final int MIN_DIFFERENCES = 20;
    private static final double CLEAR = 0.5;
    private static final double NEARLY = 0.8;
    /**
     * Longest interval tried, in standard deviations of the differences: the length is then below 0.05 for normally
     * distributed ones, exp(-2 pi^2 / 2.5^2), and rounding up to multiples of an interval makes as much spread itself.
     */
    private static final double SPREADS = 2.5;
    /**
     * Rayleigh's test (Mardia and Jupp, 6.3.1): chance exceeds the length R with a probability of about exp(-n R^2);
     * this is -ln of one in a thousand, shared by the 395 intervals.
     */
    private static final double SURELY = Math.log(395 / 0.001);

    private ArrivalLattice() {}

    /**
     * The interval in microseconds; empty if there are fewer than 20 differences or no interval fits clearly.
     *
     * @param arrivalMicros in order of arrival, one connection
     */
    public static OptionalLong intervalMicros(long[] arrivalMicros) {
        long[] differences = differences(arrivalMicros);
        if (differences.length < MIN_DIFFERENCES) {
            return OptionalLong.empty();
        }
        double longestMicros = Math.min(MAX_MICROS, SPREADS * spread(differences));
        int candidates = (int) Math.floor((longestMicros - MIN_MICROS) / STEP_MICROS) + 1;
        if (candidates < 1) {
            return OptionalLong.empty();
        }
        double[] resultants = new double[candidates];
        for (int i = 0; i < candidates; i++) {
            resultants[i] = resultant(differences, MIN_MICROS + i * STEP_MICROS);
        }
        double best = Arrays.stream(resultants).max().orElse(0);
        if (best < Math.max(CLEAR, Math.sqrt(SURELY / differences.length))) {
            return OptionalLong.empty();
        }
        int longest = candidates - 1;
        while (resultants[longest] < NEARLY * best) {
            longest--;
        }
        return OptionalLong.of(MIN_MICROS + top(resultants, longest) * STEP_MICROS);
    }

    /** The highest point of the peak whose far slope that may be: the next peak is half as long. */
    private static int top(double[] resultants, int farSlope) {
        int top = farSlope;
        for (int i = farSlope;
                i >= 0 && MIN_MICROS + i * STEP_MICROS > 0.85 * (MIN_MICROS + farSlope * STEP_MICROS);
                i--) {
            top = resultants[i] > resultants[top] ? i : top;
        }
        return top;
    }

    /** Differences of neighbours that did not share a connection event, the first of them. */
    private static long[] differences(long[] arrivals) {
        long[] found = new long[Math.min(MAX_DIFFERENCES, Math.max(0, arrivals.length - 1))];
        int size = 0;
        for (int i = 1; i < arrivals.length && size < found.length; i++) {
            long difference = arrivals[i] - arrivals[i - 1];
            if (difference >= MIN_MICROS / 2 && difference <= MAX_DIFFERENCE_MICROS) {
                found[size++] = difference;
            }
        }
        return Arrays.copyOf(found, size);
    }

    /** A standard deviation that pauses do not move: the interquartile range over that of a normal distribution. */
    private static double spread(long[] differences) {
        long[] sorted = differences.clone();
        Arrays.sort(sorted);
        return (sorted[3 * sorted.length / 4] - sorted[sorted.length / 4]) / 1.349;
    }

    private static double resultant(long[] differences, long interval) {
        double cosines = 0;
        double sines = 0;
        for (long difference : differences) {
            double angle = 2 * Math.PI * (difference % interval) / interval;
            cosines += Math.cos(angle);
            sines += Math.sin(angle);
        }
        return Math.hypot(cosines, sines) / differences.length;
    }
}
