package fermata.analysis.statistics;

/**
 * A log-normal distribution of positive times.
 *
 * @param mu mean of the natural logarithm
 * @param sigma standard deviation of the natural logarithm, positive
 */
public record LogNormal(double mu, double sigma) {
    private static final double LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);

    public LogNormal {
        if (!Double.isFinite(mu)) {
            throw new IllegalArgumentException("mu " + mu + " of a log-normal is not finite");
        }
        if (!(sigma > 0) || !Double.isFinite(sigma)) {
            throw new IllegalArgumentException("sigma " + sigma + " of a log-normal is not positive");
        }
    }

    /** The median, in the unit of the times. */
    public double median() {
        return Math.exp(mu);
    }

    /** The mean, in the unit of the times. */
    public double mean() {
        return Math.exp(mu + sigma * sigma / 2);
    }

    /** The log density of a time's logarithm: add {@code -logTime} for the density of the time itself. */
    public double logDensityOfLog(double logTime) {
        double standard = (logTime - mu) / sigma;
        return -LOG_ROOT_TWO_PI - Math.log(sigma) - standard * standard / 2;
    }
}
