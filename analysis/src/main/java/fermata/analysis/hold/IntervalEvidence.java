package fermata.analysis.hold;

import fermata.decoder.orientation.Orientation;
import java.util.Arrays;
import java.util.OptionalInt;

/**
 * The time between two turns as evidence for or against a rotation there.
 *
 * <p>An interval is log-normal about the solve's own median; with a rotation about the median plus the time of
 * one: as the solver's calibration has it, else 0.3 s (common practice, no source). In one of seven intervals something
 * else took time, a look or a regrip, whether there was a rotation or not: so a pause alone proves nothing. The
 * ratio is kept within e^-3 and e^3.
 */
public final class IntervalEvidence implements HoldEvidence {
    /** What a rotation adds to an interval of a solver of whom nothing is known. */
    public static final double ROTATION_MICROS = 300_000;

    /**
     * Into so many classes intervals fall by the logarithm of their ratio to the median: up to 0.55 of it, 0.55 to
     * 0.74, and so on, the last from 6.0.
     */
    public static final int CLASSES = 10;

    private static final double CLASS_WIDTH = 0.3;
    /** How many classes lie below the median, the one it begins not counted. */
    private static final double SHORTER = 2.5;

    private static final double SPREAD = 0.45;
    private static final double PAUSED = 1.0 / 7;
    private static final double PAUSE_FACTOR = 4;
    private static final double PAUSE_SPREAD = 0.8;
    private static final double LIMIT = 3;

    private final long[] micros;
    private final double median;
    private final double rotationMicros;

    /**
     * Evidence of these intervals, for a solver whose rotations take as long as is usual.
     *
     * @param micros by turn, the time since the turn before it; what stands for the first turn is not looked at
     */
    public IntervalEvidence(long[] micros) {
        this(micros, ROTATION_MICROS);
    }

    /**
     * Evidence of these intervals.
     *
     * @param micros as above
     * @param rotationMicros what a rotation adds to an interval; one that adds nothing cannot be heard
     */
    public IntervalEvidence(long[] micros, double rotationMicros) {
        if (!(rotationMicros >= 0)) {
            throw new IllegalArgumentException(
                    "a rotation that adds " + rotationMicros + " us to an interval would shorten it");
        }
        this.rotationMicros = rotationMicros;
        this.micros = micros.clone();
        long[] sorted = Arrays.stream(micros).skip(1).sorted().toArray();
        for (long interval : sorted) {
            if (interval < 0) {
                throw new IllegalArgumentException("an interval of " + interval + " us between turns is negative");
            }
        }
        this.median = sorted.length == 0 ? 1 : Math.max(1, sorted[sorted.length / 2]);
    }

    @Override
    public double ofRotation(int beforeTurn, Orientation rotation) {
        double logMicros = Math.log(Math.max(1, micros[beforeTurn]));
        double without = likelihood(logMicros, median);
        double with = likelihood(logMicros, median + rotationMicros);
        return Math.max(-LIMIT, Math.min(LIMIT, Math.log(with / without)));
    }

    @Override
    public OptionalInt pace(int beforeTurn) {
        double above = Math.log(Math.max(1, micros[beforeTurn]) / median);
        return OptionalInt.of((int) Math.max(0, Math.min(CLASSES - 1, Math.round(above / CLASS_WIDTH + SHORTER))));
    }

    private static double likelihood(double logMicros, double usual) {
        return (1 - PAUSED) * normal(logMicros - Math.log(usual), SPREAD)
                + PAUSED * normal(logMicros - Math.log(usual * PAUSE_FACTOR), PAUSE_SPREAD)
                + 1e-12;
    }

    private static double normal(double distance, double spread) {
        return Math.exp(-distance * distance / (2 * spread * spread)) / spread;
    }
}
