package fermata.analysis.hold.learning;

import java.util.Arrays;

/**
 * Steps uphill of one vector of weights, each weight's slope measured by what it was lately (Kingma and Ba 2015, Adam,
 * algorithm 1, with their 0.9 and, as the steps are few, 0.99), and smaller to the end by half a cosine. Not
 * thread-safe. Cost of a step: one pass over the weights.
 */
final class Adam {
    private static final double LONGEST = 0.06;
    private static final double NO_SLOPE = 1e-3;

    private final double[] weights;
    private final double[] mean;
    private final double[] square;
    private final int steps;
    private int step;

    /** Will move these weights in so many steps. */
    Adam(double[] weights, int steps) {
        this.weights = weights;
        this.mean = new double[weights.length];
        this.square = new double[weights.length];
        this.steps = steps;
    }

    /** The next step. */
    void climb(double[] slope) {
        step++;
        double rate = LONGEST * 0.5 * (1 + Math.cos(Math.PI * step / steps));
        double meanKnown = 1 - Math.pow(0.9, step);
        double squareKnown = 1 - Math.pow(0.99, step);
        Arrays.setAll(mean, at -> 0.9 * mean[at] + 0.1 * slope[at]);
        Arrays.setAll(square, at -> 0.99 * square[at] + 0.01 * slope[at] * slope[at]);
        Arrays.setAll(
                weights,
                at -> weights[at] + rate * (mean[at] / meanKnown) / (Math.sqrt(square[at] / squareKnown) + NO_SLOPE));
    }
}
