package fermata.analysis.rest;

import fermata.analysis.statistics.LogNormal;
import java.util.ArrayList;
import java.util.List;

/**
 * Shares the seconds of one rest among its possible causes.
 *
 * <p>Every non-empty set of suspected causes is weighed: by how likely exactly these took part, and by how well the
 * sum of their usual lengths fits the rest (a log-normal with the sum's mean and variance: Fenton 1960). Within a set
 * each cause gets its usual length, and what the rest is longer or shorter is spread in proportion to their variances,
 * the best linear guess. Cost: 2^n sets for n suspicions, n at most 6.
 */
final class CauseSharing {
    private static final double LEAST_PART = 0.1;

    private final List<Suspicion> suspicions;
    private final double[] means;
    private final double[] variances;
    private final double[] presences;
    /** By set, as a bit mask; set 0 has no weight. */
    private final double[] weights;

    private final double[] setMeans;
    private final double[] setVariances;

    private final double excess;

    private CauseSharing(List<Suspicion> suspicions, CauseSnapshot causes, double excess, double noiseVariance) {
        int count = suspicions.size();
        this.suspicions = suspicions;
        this.excess = excess;
        this.means = new double[count];
        this.variances = new double[count];
        this.presences = new double[count];
        for (int which = 0; which < count; which++) {
            LogNormal length =
                    causes.length(suspicions.get(which).circumstance().cause());
            means[which] = length.mean();
            variances[which] = means[which] * means[which] * Math.expm1(length.sigma() * length.sigma());
            presences[which] = suspicions.get(which).presence(causes);
        }
        this.setMeans = new double[1 << count];
        this.setVariances = new double[1 << count];
        this.weights = weigh(noiseVariance);
    }

    /** @param noiseVariance how much of the excess may be fluent turning, squared microseconds */
    static CauseSharing of(List<Suspicion> suspicions, CauseSnapshot causes, double excess, double noiseVariance) {
        return new CauseSharing(suspicions, causes, Math.max(1, excess), noiseVariance);
    }

    private double[] weigh(double noiseVariance) {
        double[] found = new double[1 << means.length];
        double total = 0;
        for (int set = 1; set < found.length; set++) {
            double mean = 0;
            double variance = noiseVariance;
            double prior = 1;
            for (int which = 0; which < means.length; which++) {
                boolean isIn = (set >> which & 1) == 1;
                prior *= isIn ? presences[which] : 1 - presences[which];
                mean += isIn ? means[which] : 0;
                variance += isIn ? variances[which] : 0;
            }
            setMeans[set] = mean;
            setVariances[set] = variance;
            double square = Math.log1p(variance / (mean * mean));
            LogNormal sum = new LogNormal(Math.log(mean) - square / 2, Math.sqrt(square));
            found[set] = prior * Math.exp(sum.logDensityOfLog(Math.log(excess)));
            total += found[set];
        }
        for (int set = 1; set < found.length; set++) {
            // A rest like none that is known fits no set; then the prior would decide alone, and all sets share alike.
            found[set] = total > 0 ? found[set] / total : 1.0 / (found.length - 1);
        }
        return found;
    }

    /** How likely each suspicion took part. */
    double[] probabilities() {
        return average((set, which) -> 1);
    }

    /** Each suspicion's part, averaged over the sets it is in and those it is not in. */
    double[] expectations() {
        return average(this::expectation);
    }

    /** The same of the part's square. */
    double[] squares() {
        return average((set, which) -> {
            double expected = expectation(set, which);
            double unknown = variances[which] - variances[which] * variances[which] / setVariances[set];
            return expected * expected + unknown;
        });
    }

    private double[] average(OfSet value) {
        double[] averages = new double[means.length];
        for (int set = 1; set < weights.length; set++) {
            for (int which = 0; which < means.length; which++) {
                averages[which] += (set >> which & 1) == 1 ? weights[set] * value.of(set, which) : 0;
            }
        }
        return averages;
    }

    private double expectation(int set, int which) {
        double usual = means[which] + variances[which] / setVariances[set] * (excess - setMeans[set]);
        // A far shorter rest would leave a cause with less than nothing.
        return Math.max(LEAST_PART * Math.min(means[which], excess), usual);
    }

    /** One share a cause, in the order of the suspicions; they add up to the excess. */
    List<CauseShare> shares() {
        double[] probabilities = probabilities();
        double[] parts = average((set, which) -> expectation(set, which) * excess / total(set));
        List<CauseShare> shares = new ArrayList<>();
        for (int which = 0; which < parts.length; which++) {
            shares.add(new CauseShare(
                    suspicions.get(which).circumstance().cause(), Math.min(1, probabilities[which]), parts[which]));
        }
        return shares;
    }

    private double total(int set) {
        double total = 0;
        for (int which = 0; which < means.length; which++) {
            total += (set >> which & 1) == 1 ? expectation(set, which) : 0;
        }
        return total;
    }

    private interface OfSet {
        double of(int set, int which);
    }
}
