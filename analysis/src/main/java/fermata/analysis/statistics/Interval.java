package fermata.analysis.statistics;

/**
 * A closed interval around an estimate.
 *
 * @param low lower end, not above {@code high}
 * @param high upper end
 */
public record Interval(double low, double high) {
    public Interval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("interval from " + low + " to " + high + " runs backwards");
        }
    }

    /** Whether the value lies inside or on an end. */
    public boolean contains(double value) {
        return low <= value && value <= high;
    }
}
