package fermata.analysis.statistics;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * So many of so many.
 *
 * @param hits how many, 0 to {@code of}
 * @param of out of how many, at least 1
 */
public record Proportion(int hits, int of) {
    public Proportion {
        if (of < 1 || hits < 0 || hits > of) {
            throw new IllegalArgumentException(hits + " of " + of + " is no proportion");
        }
    }

    /** The share itself. */
    public double share() {
        return (double) hits / of;
    }

    /** Wilson's score interval (Wilson 1927, JASA 22, 209-212), without continuity correction. */
    public Interval wilson(double confidence) {
        double z = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + confidence / 2);
        double spread = z * z / of;
        double centre = (share() + spread / 2) / (1 + spread);
        double half = z * Math.sqrt(share() * (1 - share()) / of + spread / (4 * of)) / (1 + spread);
        return new Interval(Math.max(0, centre - half), Math.min(1, centre + half));
    }
}
