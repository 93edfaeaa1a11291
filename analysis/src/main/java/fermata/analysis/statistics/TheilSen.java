package fermata.analysis.statistics;

import java.util.Arrays;
import org.apache.commons.statistics.descriptive.Median;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A straight trend that a few odd nights cannot move: the median of the slopes of all pairs.
 *
 * <p>Sources: Theil 1950; Sen 1968 (JASA 63, 1379-1389) for the interval, with the normal approximation of Kendall's
 * S and ties in y corrected for. Immutable.
 */
public final class TheilSen {
    /** Fewer points give an interval that says nothing. */
    public static final int FEWEST_POINTS = 4;

    private final double slope;
    private final double intercept;
    private final double[] sortedSlopes;
    private final double varianceOfKendallsS;

    private TheilSen(double slope, double intercept, double[] sortedSlopes, double varianceOfKendallsS) {
        this.slope = slope;
        this.intercept = intercept;
        this.sortedSlopes = sortedSlopes;
        this.varianceOfKendallsS = varianceOfKendallsS;
    }

    /**
     * Fits the trend. Cost: n (n - 1) / 2 slopes, sorted and kept.
     *
     * @param x where, at least {@link #FEWEST_POINTS} values, not all the same
     * @param y what, as many
     */
    public static TheilSen fit(double[] x, double[] y) {
        if (x.length != y.length || x.length < FEWEST_POINTS) {
            throw new IllegalArgumentException(x.length + " x and " + y.length + " y values; a trend needs at least "
                    + FEWEST_POINTS + " of each");
        }
        double[] slopes = slopes(x, y);
        if (slopes.length == 0) {
            throw new IllegalArgumentException("all x values are " + x[0] + ": no trend");
        }
        double slope = Median.withDefaults().evaluate(slopes);
        double[] rests = new double[x.length];
        for (int index = 0; index < x.length; index++) {
            rests[index] = y[index] - slope * x[index];
        }
        return new TheilSen(slope, Median.withDefaults().evaluate(rests), slopes, varianceOfKendallsS(y));
    }

    /** The median slope, in units of y per unit of x. */
    public double slope() {
        return slope;
    }

    /** The median of {@code y - slope * x}. */
    public double intercept() {
        return intercept;
    }

    /** How many pairs of points had different x. */
    public int pairs() {
        return sortedSlopes.length;
    }

    /**
     * Sen's interval of the slope. Of few points it may not reach as far as asked: then it ends at the steepest slope.
     *
     * @param confidence in (0, 1)
     */
    public Interval slopeInterval(double confidence) {
        double z = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.5 + confidence / 2);
        double reach = z * Math.sqrt(varianceOfKendallsS);
        int pairs = sortedSlopes.length;
        int low = (int) Math.rint((pairs - reach) / 2);
        int high = (int) Math.rint((pairs + reach) / 2 + 1);
        return new Interval(sortedSlopes[Math.max(1, low) - 1], sortedSlopes[Math.min(pairs, high) - 1]);
    }

    private static double[] slopes(double[] x, double[] y) {
        double[] slopes = new double[x.length * (x.length - 1) / 2];
        int count = 0;
        for (int second = 1; second < x.length; second++) {
            for (int first = 0; first < second; first++) {
                if (x[first] != x[second]) {
                    slopes[count++] = (y[second] - y[first]) / (x[second] - x[first]);
                }
            }
        }
        double[] found = Arrays.copyOf(slopes, count);
        Arrays.sort(found);
        return found;
    }

    private static double varianceOfKendallsS(double[] y) {
        double[] sorted = y.clone();
        Arrays.sort(sorted);
        double variance = tieTerm(y.length);
        int run = 1;
        for (int index = 1; index <= sorted.length; index++) {
            if (index < sorted.length && sorted[index] == sorted[index - 1]) {
                run++;
            } else {
                variance -= tieTerm(run);
                run = 1;
            }
        }
        return variance / 18;
    }

    private static double tieTerm(double count) {
        return count * (count - 1) * (2 * count + 5);
    }
}
