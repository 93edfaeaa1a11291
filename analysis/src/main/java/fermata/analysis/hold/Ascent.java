package fermata.analysis.hold;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;

/** Climbs to the weights that make the examples' layers likeliest, in Adam's steps (Kingma and Ba 2015). One use. */
final class Ascent {
    private static final int BATCH = 8;
    private static final double STEP = 0.06;

    private final List<HoldTrainer.Prepared> examples;
    private final HoldTrainer.Settings settings;
    private final double[] prices;
    private final double[][] weights = new double[HoldWeights.Circle.values().length][Template.SIZE];
    private final double[][] mean = new double[weights.length][Template.SIZE];
    private final double[][] square = new double[weights.length][Template.SIZE];

    /** From weights of nothing; a feature of infinite price stays there. */
    Ascent(List<HoldTrainer.Prepared> examples, HoldTrainer.Settings settings, double[] prices) {
        this.examples = examples;
        this.settings = settings;
        this.prices = prices;
    }

    /** Cost: all passes over all examples. */
    double[][] run(SplittableRandom random) {
        List<HoldTrainer.Prepared> order = new ArrayList<>(examples);
        int batches = (order.size() + BATCH - 1) / BATCH;
        int steps = settings.passes() * batches;
        int step = 0;
        for (int pass = 0; pass < settings.passes(); pass++) {
            for (int place = order.size() - 1; place > 0; place--) {
                Collections.swap(order, place, random.nextInt(place + 1));
            }
            for (int batch = 0; batch < batches; batch++) {
                step++;
                double rate = STEP * 0.5 * (1 + Math.cos(Math.PI * step / steps));
                step(
                        order.subList(batch * BATCH, Math.min(order.size(), (batch + 1) * BATCH)),
                        step,
                        rate,
                        pass < settings.passes() / 2);
            }
        }
        return weights;
    }

    private void step(List<HoldTrainer.Prepared> batch, int step, double rate, boolean asWritten) {
        double[][] gradient = new double[weights.length][Template.SIZE];
        HoldWeights current = new HoldWeights(weights);
        for (HoldTrainer.Prepared one : batch) {
            double[] sum = current.of(one.circles());
            double[] slope = new double[Template.SIZE];
            Scores scores = new Scores(one.features(), sum);
            new Expectation(one.features(), scores.only(asWritten ? one.written() : one.truth()))
                    .addTo(slope, one.factor());
            new Expectation(one.features(), scores).addTo(slope, -one.factor());
            for (HoldWeights.Circle circle : one.circles()) {
                for (int feature = 0; feature < slope.length; feature++) {
                    gradient[circle.ordinal()][feature] += slope[feature];
                }
            }
        }
        double share = (double) batch.size() / examples.size();
        double forget1 = 1 - Math.pow(0.9, step);
        double forget2 = 1 - Math.pow(0.99, step);
        for (int circle = 0; circle < weights.length; circle++) {
            double price = circle == 0 ? settings.price() : settings.correctionPrice();
            for (int feature = 0; feature < Template.SIZE; feature++) {
                if (prices[feature] == Double.POSITIVE_INFINITY) {
                    continue;
                }
                double slope = gradient[circle][feature] - price * prices[feature] * share * weights[circle][feature];
                mean[circle][feature] = 0.9 * mean[circle][feature] + 0.1 * slope;
                square[circle][feature] = 0.99 * square[circle][feature] + 0.01 * slope * slope;
                weights[circle][feature] += rate
                        * (mean[circle][feature] / forget1)
                        / (Math.sqrt(square[circle][feature] / forget2) + 1e-3);
            }
        }
    }
}
