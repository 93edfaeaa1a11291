package fermata.analysis.hold.sensor;

import java.util.Arrays;

/**
 * How far a sensor's north has turned, turn by turn, up to quarter turns: a hidden chain over a circle of 90 degrees.
 *
 * <p>The yaw is known up to quarters without knowing a hold, since every hold looks alike after a quarter. It walks at
 * random; how fast is not assumed but the likeliest of a few rates. Cost: {@value #BINS} bins, {@value #REACH} steps
 * each way, linear in turns.
 */
final class YawWalk {
    static final int BINS = 60;
    static final double BIN_RADIANS = Math.PI / 2 / BINS;

    /** Degrees in the square root of a second: from a good sensor at rest to a poor one in a busy hand. */
    private static final double[] RATES = {0.25, 0.5, 1, 2, 3};

    static final double USUAL_RATE = 2;

    private static final int REACH = BINS / 2;

    /** By turn, the bins' probabilities from all other turns. */
    final double[][] cavity;
    /** By turn, the most likely yaw in radians from all turns, unwrapped. */
    final double[] path;

    final double logLikelihood;

    private YawWalk(double[][] likelihoods, double[][] kernels) {
        int turns = likelihoods.length;
        double[][] ahead = new double[turns][];
        double logTotal = 0;
        double[] now = new double[BINS];
        Arrays.fill(now, 1.0 / BINS);
        for (int turn = 0; turn < turns; turn++) {
            ahead[turn] = turn == 0 ? now : spread(now, kernels[turn]);
            now = times(ahead[turn], likelihoods[turn]);
            logTotal += Math.log(normalise(now));
        }
        this.logLikelihood = logTotal;
        this.cavity = ahead;
        this.path = new double[turns];
        double[] back = new double[BINS];
        Arrays.fill(back, 1);
        for (int turn = turns - 1; turn >= 0; turn--) {
            cavity[turn] = times(ahead[turn], back);
            normalise(cavity[turn]);
            path[turn] = middle(times(cavity[turn], likelihoods[turn]));
            back = times(back, likelihoods[turn]);
            normalise(back);
            back = turn == 0 ? back : spread(back, kernels[turn]);
        }
        for (int turn = 1; turn < turns; turn++) {
            path[turn] = path[turn - 1] + Math.IEEEremainder(path[turn] - path[turn - 1], Math.PI / 2);
        }
    }

    /** The walk at the likeliest rate. */
    static YawWalk of(long[] micros, double[][] likelihoods) {
        YawWalk best = null;
        for (double rate : RATES) {
            YawWalk walk = at(rate, micros, likelihoods);
            best = best == null || walk.logLikelihood > best.logLikelihood ? walk : best;
        }
        return best;
    }

    /** The walk at a rate, in degrees in the square root of a second. */
    static YawWalk at(double rate, long[] micros, double[][] likelihoods) {
        double[][] kernels = new double[micros.length][];
        for (int turn = 1; turn < micros.length; turn++) {
            double seconds = Math.max(0, micros[turn] - micros[turn - 1]) / 1e6;
            kernels[turn] = kernel(Math.toRadians(rate) * Math.sqrt(seconds));
        }
        return new YawWalk(likelihoods, kernels);
    }

    /** By distance in bins; of the given spread even where that is less than a bin. */
    private static double[] kernel(double radians) {
        double[] kernel = new double[REACH + 1];
        double bins = radians / BIN_RADIANS;
        if (bins > 0.8) {
            return gauss(bins);
        }
        kernel[1] = bins * bins / 2;
        kernel[0] = 1 - bins * bins;
        return kernel;
    }

    private static double[] gauss(double bins) {
        double[] kernel = new double[REACH + 1];
        double sum = 0;
        for (int away = 0; away <= REACH; away++) {
            kernel[away] = Math.exp(-away * away / (2 * bins * bins));
            sum += (away == 0 ? 1 : 2) * kernel[away];
        }
        for (int away = 0; away <= REACH; away++) {
            kernel[away] /= sum;
        }
        return kernel;
    }

    private static double[] spread(double[] from, double[] kernel) {
        double[] to = new double[BINS];
        int reach = REACH;
        while (reach > 0 && kernel[reach] < 1e-9) {
            reach--;
        }
        for (int bin = 0; bin < BINS; bin++) {
            double sum = kernel[0] * from[bin];
            for (int away = 1; away <= reach; away++) {
                sum += kernel[away] * (from[(bin + away) % BINS] + from[(bin + BINS - away) % BINS]);
            }
            to[bin] = sum;
        }
        return to;
    }

    private static double[] times(double[] one, double[] other) {
        double[] product = new double[BINS];
        Arrays.setAll(product, bin -> one[bin] * other[bin]);
        return product;
    }

    private static double normalise(double[] values) {
        double sum = Arrays.stream(values).sum();
        for (int bin = 0; bin < BINS; bin++) {
            values[bin] /= sum;
        }
        return sum;
    }

    /** The mean direction on the circle of 90 degrees. */
    private static double middle(double[] weights) {
        double sine = 0;
        double cosine = 0;
        for (int bin = 0; bin < BINS; bin++) {
            sine += weights[bin] * Math.sin(4 * bin * BIN_RADIANS);
            cosine += weights[bin] * Math.cos(4 * bin * BIN_RADIANS);
        }
        return Math.atan2(sine, cosine) / 4;
    }
}
