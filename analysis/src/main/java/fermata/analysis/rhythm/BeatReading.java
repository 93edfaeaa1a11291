package fermata.analysis.rhythm;

import fermata.analysis.beat.Beat;
import java.util.Objects;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What the rhythm makes of a beat.
 *
 * @param beat which
 * @param restProbability that it holds a rest
 * @param fluentMicros the median of fluent beats there
 * @param fluentSpread the standard deviation of their logarithm
 */
public record BeatReading(Beat beat, double restProbability, double fluentMicros, double fluentSpread) {
    /** From this probability on a beat is called a rest of some length; chosen to be rather silent than wrong. */
    public static final double CALLED_REST_FROM = 0.7;

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    public BeatReading {
        Objects.requireNonNull(beat, "beat");
        if (!(restProbability >= 0 && restProbability <= 1) || !(fluentMicros > 0) || !(fluentSpread > 0)) {
            throw new IllegalArgumentException(
                    "rest probability " + restProbability + " is not in 0..1, or fluent time " + fluentMicros
                            + " us or spread " + fluentSpread + " is not positive");
        }
    }

    /** Microseconds beyond the fluent median; 0 if the beat is shorter. */
    public double excessMicros() {
        return Math.max(0, beat.micros() - fluentMicros);
    }

    /** The excess times the probability that it is a rest: what a sum of seconds lost counts. */
    public double expectedMicros() {
        return restProbability * excessMicros();
    }

    /**
     * The probability that there is a rest of at least so many microseconds: that there is one at all, and that the
     * fluent part of the beat took no more than what is left.
     */
    public double probabilityOfAtLeast(long micros) {
        double left = beat.micros() - micros;
        return left <= 0
                ? 0
                : restProbability
                        * NORMAL.cumulativeProbability((Math.log(left) - Math.log(fluentMicros)) / fluentSpread);
    }

    /** Whether it is sure enough to be called a rest of at least so many microseconds. */
    public boolean isRestOfAtLeast(long micros) {
        return probabilityOfAtLeast(micros) >= CALLED_REST_FROM;
    }
}
