package fermata.analysis.statistics;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.random.RandomGenerator;
import org.apache.commons.statistics.descriptive.Quantile;

/**
 * Percentile intervals for the mean of items that come in clusters: solves in nights.
 *
 * <p>Each resample draws clusters with replacement, then items within each drawn cluster with replacement. Solves of
 * one night are alike (a warm hand, a new cube), so drawing solves alone would promise too much. Source: Davison,
 * Hinkley 1997, Bootstrap Methods and their Application, section 3.8; quantiles of type 7 (Hyndman, Fan 1996).
 *
 * @param resamples how many resamples, at least 100
 * @param random the source of chance; owned by the caller's thread
 */
public record NestedBootstrap(int resamples, RandomGenerator random) {
    public NestedBootstrap {
        Objects.requireNonNull(random, "random");
        if (resamples < 100) {
            throw new IllegalArgumentException(resamples + " resamples are too few for a percentile; at least 100");
        }
    }

    /**
     * The interval that the mean of all values keeps in {@code confidence} of the resamples. With a single cluster only
     * its items are drawn. Cost: resamples times values.
     *
     * @param clusters at least one, none empty
     */
    public Interval intervalOfMean(List<double[]> clusters, double confidence) {
        if (clusters.isEmpty() || clusters.stream().anyMatch(cluster -> cluster.length == 0)) {
            throw new IllegalArgumentException("a bootstrap needs at least one cluster, and none that is empty");
        }
        double[] values = new double[resamples];
        for (int round = 0; round < resamples; round++) {
            double sum = 0;
            long count = 0;
            for (int cluster = 0; cluster < clusters.size(); cluster++) {
                double[] night = clusters.get(random.nextInt(clusters.size()));
                for (int item = 0; item < night.length; item++) {
                    sum += night[random.nextInt(night.length)];
                }
                count += night.length;
            }
            values[round] = sum / count;
        }
        return percentiles(values, confidence);
    }

    /** The central interval of values that were already drawn. */
    static Interval percentiles(double[] values, double confidence) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double tail = (1 - confidence) / 2;
        double[] ends =
                Quantile.withDefaults().with(Quantile.EstimationMethod.HF7).evaluate(sorted, tail, 1 - tail);
        return new Interval(ends[0], ends[1]);
    }
}
