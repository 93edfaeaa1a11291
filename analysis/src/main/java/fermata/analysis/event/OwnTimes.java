package fermata.analysis.event;

import java.util.Objects;

/**
 * How long one solver's hand took from turn to turn in a calibration drill, by what lay between the turns by design. As
 * it was measured: what is usual is added only where it is used, by how few intervals there are. Immutable.
 */
public record OwnTimes(Taken fluent, Taken regrip, Taken rotation, Taken wide) {
    /** Of a solver who has done no calibration drill. */
    public static final OwnTimes NONE = new OwnTimes(Taken.NEVER, Taken.NEVER, Taken.NEVER, Taken.NEVER);

    /** What is usual weighs as much as this many intervals of each kind: our choice, not tuned. */
    static final double USUAL_WEIGHT = 5;

    /**
     * The intervals of one kind.
     *
     * @param count how many
     * @param medianMicros their median; 0 if there are none
     */
    public record Taken(int count, long medianMicros) {
        /** None of a kind. */
        public static final Taken NEVER = new Taken(0, 0);

        public Taken {
            if (count < 0 || medianMicros < 0 || (count == 0) != (medianMicros == 0)) {
                throw new IllegalArgumentException("a median of " + medianMicros + " us over " + count
                        + " intervals: both must be positive, or both 0");
            }
        }
    }

    public OwnTimes {
        Objects.requireNonNull(fluent, "fluent");
        Objects.requireNonNull(regrip, "regrip");
        Objects.requireNonNull(rotation, "rotation");
        Objects.requireNonNull(wide, "wide");
    }

    /** By how much the logarithm of an interval with a regrip lies above a fluent one, drawn towards the usual. */
    public double regripLogAbove(double usual) {
        return drawn(regrip, logAbove(regrip), usual);
    }

    /** By how much the logarithm of an interval with a rotation lies above a fluent one, drawn towards the usual. */
    public double rotationLogAbove(double usual) {
        return drawn(rotation, logAbove(rotation), usual);
    }

    /** By how many microseconds an interval with a rotation is longer than a fluent one, drawn towards the usual. */
    public double rotationMicrosAbove(double usual) {
        return drawn(rotation, rotation.medianMicros - fluent.medianMicros, usual);
    }

    private double logAbove(Taken kind) {
        return Math.log((double) kind.medianMicros / fluent.medianMicros);
    }

    /** A difference is as sure as its two medians together, so their counts join like resistors side by side. */
    private double drawn(Taken kind, double measured, double usual) {
        if (kind.count == 0 || fluent.count == 0) {
            return usual;
        }
        double weight = 1 / (1.0 / kind.count + 1.0 / fluent.count);
        return (weight * measured + USUAL_WEIGHT * usual) / (weight + USUAL_WEIGHT);
    }
}
