package fermata.analysis.rhythm;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * A night's rhythm, frozen. Equal values have equal ids.
 *
 * <p>A rest is an interval longer than {@link #restFromMicros()}: the median times e^(deviations x logDeviation), and
 * never under the floor.
 *
 * @param medianMicros median interval between turns
 * @param logDeviation spread of the intervals' natural logarithms: 1.4826 times their median absolute deviation
 * @param deviations how many of those a rest lies beyond the median
 * @param floorMicros nothing shorter is a rest
 * @param intervals how many intervals were learned from; 0 for {@link #PRIOR}
 */
public record RhythmSnapshot(
        long medianMicros, double logDeviation, double deviations, long floorMicros, int intervals) {
    /** Intervals it takes to learn a rhythm; with fewer the prior stands. */
    public static final int INTERVALS_NEEDED = 60;

    /**
     * 2.5: on the two reference mixtures of turns and pauses it cuts where a pause is 95 % likely or a little beyond,
     * so what is called a rest hardly ever is a slow turn.
     */
    static final double DEVIATIONS = 2.5;

    /**
     * A quarter of a second: simple reactions take about 230 ms (Woods et al. 2015), so less cannot have been a look.
     */
    static final long FLOOR_MICROS = 250_000;

    /**
     * For a night too short to have a rhythm: two turns a second and a half, spread as in typing (Roeser et al. 2021,
     * fluent log variance 0.29).
     */
    public static final RhythmSnapshot PRIOR = new RhythmSnapshot(300_000, 0.54, DEVIATIONS, FLOOR_MICROS, 0);

    /** Makes the deviation of a sample's absolute deviations comparable to a normal standard deviation. */
    private static final double NORMAL = 1.4826;

    /** An interval of 0 is two turns in one tick of the device; a log needs something. */
    private static final long TICK_MICROS = 1_000;

    public RhythmSnapshot {
        if (medianMicros <= 0 || !(logDeviation >= 0) || !(deviations > 0) || floorMicros <= 0 || intervals < 0) {
            throw new IllegalArgumentException("rhythm with median " + medianMicros + " us, log deviation "
                    + logDeviation + ", " + deviations + " deviations, floor " + floorMicros + " us, " + intervals
                    + " intervals: all must be positive, the deviation and the count at least 0");
        }
    }

    /**
     * Learns from a night's intervals between turns of attempts, in microseconds; their order does not matter. Cost:
     * two sorts.
     */
    public static RhythmSnapshot learn(long[] intervalsMicros) {
        if (intervalsMicros.length < INTERVALS_NEEDED) {
            return PRIOR;
        }
        double[] logs = Arrays.stream(intervalsMicros)
                .mapToDouble(micros -> Math.log(Math.max(TICK_MICROS, micros)))
                .toArray();
        double median = median(logs);
        double deviation = NORMAL
                * median(Arrays.stream(logs).map(log -> Math.abs(log - median)).toArray());
        return new RhythmSnapshot(
                Math.round(Math.exp(median)), deviation, DEVIATIONS, FLOOR_MICROS, intervalsMicros.length);
    }

    /** The shortest interval that is a rest, in microseconds. */
    public long restFromMicros() {
        return Math.max(floorMicros, Math.round(medianMicros * Math.exp(deviations * logDeviation)));
    }

    /** Twelve hexadecimal digits of a SHA-256 over the values. */
    public String id() {
        String values = medianMicros + " " + logDeviation + " " + deviations + " " + floorMicros + " " + intervals;
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(values.getBytes(StandardCharsets.US_ASCII));
            return HexFormat.of().formatHex(digest, 0, 6);
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java platform must have SHA-256", missing);
        }
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
