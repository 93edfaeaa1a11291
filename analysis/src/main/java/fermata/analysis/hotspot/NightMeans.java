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
    private final Spread spread;

    NightMeans(List<double[]> nights) {
        this.nights = nights.stream().filter(night -> night.length > 0).toList();
        double[] sums = new double[this.nights.size()];
        int[] ends = new int[sums.length];
        double squares = 0;
        for (int night = 0; night < sums.length; night++) {
            double[] values = this.nights.get(night);
            sums[night] = Arrays.stream(values).sum();
            squares += Arrays.stream(values).map(value -> value * value).sum();
            ends[night] = (night == 0 ? 0 : ends[night - 1]) + values.length;
        }
        this.spread = Spread.of(sums, squares, ends);
    }

    /**
     * How values spread within nights and their nights' means between them.
     *
     * @param mean of all solves
     * @param within variance within nights
     * @param between variance of the nights' means; 0 with one night only
     * @param solves how many
     * @param nights how many with a solve, at least 1
     */
    record Spread(double mean, double within, double between, int solves, int nights) {
        static Spread of(double[] sums, double squares, int[] nightEnds) {
            int nights = 0;
            int begin = 0;
            double within = squares;
            double total = 0;
            double meansSum = 0;
            double meansSquares = 0;
            for (int night = 0; night < sums.length; night++) {
                int count = nightEnds[night] - begin;
                begin = nightEnds[night];
                if (count > 0) {
                    double mean = sums[night] / count;
                    within -= sums[night] * mean;
                    total += sums[night];
                    meansSum += mean;
                    meansSquares += mean * mean;
                    nights++;
                }
            }
            double between = nights < 2 ? 0 : (meansSquares - meansSum * meansSum / nights) / (nights - 1);
            return new Spread(
                    total / begin,
                    Math.max(0, within) / Math.max(1, begin - nights),
                    Math.max(0, between),
                    begin,
                    nights);
        }

        /** The variance of the mean, nights being alike or not. */
        double varianceOfMean() {
            return Math.max(within / solves, between / nights);
        }

        /** 0: the nights' means stay apart; 1: they become one. */
        private double drawnTogether() {
            if (nights < 2 || between <= 0) {
                return 0;
            }
            double wanted = between / nights - within / solves;
            double kept = wanted * nights * nights / ((nights - 1) * between);
            return 1 - Math.sqrt(Math.min(1, Math.max(0, kept)));
        }
    }

    Interval interval(NestedBootstrap bootstrap) {
        double drawn = spread.drawnTogether();
        List<double[]> clusters = new ArrayList<>();
        for (double[] night : nights) {
            double shift = drawn * (spread.mean() - Arrays.stream(night).sum() / night.length);
            clusters.add(Arrays.stream(night).map(value -> value + shift).toArray());
        }
        return bootstrap.intervalOfMean(clusters, CONFIDENCE);
    }
}
