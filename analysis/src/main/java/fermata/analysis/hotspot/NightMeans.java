package fermata.analysis.hotspot;

import fermata.analysis.statistics.Interval;
import fermata.analysis.statistics.NestedBootstrap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The mean of a value per solve over nights, with a bootstrap interval over nights, then solves.
 *
 * <p>Resampling both levels counts the spread within nights twice; so the nights' means are first drawn together as
 * far as makes the resampled variance the right one (Davison, Hinkley 1997, section 3.8).
 */
final class NightMeans {
    private static final double CONFIDENCE = 0.95;

    private final List<double[]> nights;

    NightMeans(List<double[]> nights) {
        this.nights = nights.stream().filter(night -> night.length > 0).toList();
    }

    int count() {
        return nights.stream().mapToInt(night -> night.length).sum();
    }

    double mean() {
        return nights.stream().flatMapToDouble(Arrays::stream).average().orElse(0);
    }

    /** The variance of the mean, nights being alike or not. */
    double varianceOfMean() {
        return Math.max(withinVariance() / count(), betweenVariance() / nights.size());
    }

    Interval interval(NestedBootstrap bootstrap) {
        double mean = mean();
        double drawn = drawnTogether();
        List<List<Double>> clusters = new ArrayList<>();
        for (double[] night : nights) {
            double shift = drawn * (mean - mean(night));
            clusters.add(Arrays.stream(night).mapToObj(value -> value + shift).toList());
        }
        return bootstrap.interval(clusters, NightMeans::meanOf, CONFIDENCE);
    }

    private static double meanOf(List<Double> values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum / values.size();
    }

    /** 0: the nights' means stay apart; 1: they become one. */
    private double drawnTogether() {
        int count = nights.size();
        double between = betweenVariance();
        if (count < 2 || between <= 0) {
            return 0;
        }
        double wanted = between / count - withinVariance() / count();
        double kept = wanted * count * count / ((count - 1) * between);
        return 1 - Math.sqrt(Math.min(1, Math.max(0, kept)));
    }

    private double withinVariance() {
        double squares = 0;
        for (double[] night : nights) {
            double mean = mean(night);
            squares += Arrays.stream(night)
                    .map(value -> (value - mean) * (value - mean))
                    .sum();
        }
        return squares / Math.max(1, count() - nights.size());
    }

    private double betweenVariance() {
        if (nights.size() < 2) {
            return 0;
        }
        double[] means = nights.stream().mapToDouble(NightMeans::mean).toArray();
        double mean = mean(means);
        return Arrays.stream(means)
                        .map(value -> (value - mean) * (value - mean))
                        .sum()
                / (means.length - 1);
    }

    private static double mean(double[] values) {
        return Arrays.stream(values).average().orElse(0);
    }
}
