package fermata.analysis.hold.learning;

import fermata.analysis.hold.lattice.Expectation;
import fermata.analysis.hold.lattice.HoldWeights;
import fermata.analysis.hold.lattice.Reach;
import fermata.analysis.hold.lattice.Scores;
import fermata.analysis.hold.lattice.Template;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Climbs to the weights that make the examples' layers likeliest, in {@linkplain Adam Adam's} steps. One use. */
final class Ascent {
    private static final int BATCH = 8;

    /**
     * How likely all features of a template are left out of an example in a pass. What is sure of a reading by one kind
     * of feature teaches nothing to the others, which are missed where that kind is silent: so each is learned without
     * some of the others (Sutton, Sindelar and McCallum 2006, weight undertraining). Chosen on deals of folds that are
     * not reported.
     */
    private static final double LEFT_OUT = 0.3;

    private final List<HoldTrainer.Prepared> examples;
    private final HoldTrainer.Settings settings;
    private final double[] prices;
    private final int[] templates = new int[Template.SIZE];
    private final double[][] weights = new double[HoldWeights.Circle.values().length][Template.SIZE];

    /** From weights of nothing but what is stated; a feature of infinite price stays there. */
    Ascent(List<HoldTrainer.Prepared> examples, HoldTrainer.Settings settings, double[] prices) {
        this.examples = examples;
        this.settings = settings;
        this.prices = prices;
        Arrays.setAll(templates, feature -> Template.of(feature).ordinal());
        weights[HoldWeights.Circle.REACH.ordinal()] = Reach.weights();
    }

    /** Cost: all passes over all examples. */
    double[][] run(SplittableRandom random) {
        List<HoldTrainer.Prepared> order = new ArrayList<>(examples);
        int batches = (order.size() + BATCH - 1) / BATCH;
        Adam[] climbers = climbers(settings.passes() * batches);
        for (int pass = 0; pass < settings.passes(); pass++) {
            for (int place = order.size() - 1; place > 0; place--) {
                Collections.swap(order, place, random.nextInt(place + 1));
            }
            for (int batch = 0; batch < batches; batch++) {
                List<HoldTrainer.Prepared> some =
                        order.subList(batch * BATCH, Math.min(order.size(), (batch + 1) * BATCH));
                climb(climbers, gradient(some, pass < settings.passes() / 2, random), some.size());
            }
        }
        return weights;
    }

    /** One for each circle that is learned. */
    private Adam[] climbers(int steps) {
        return IntStream.range(0, HoldWeights.Circle.REACH.ordinal())
                .mapToObj(circle -> new Adam(weights[circle], steps))
                .toArray(Adam[]::new);
    }

    private double[][] gradient(List<HoldTrainer.Prepared> batch, boolean asWritten, SplittableRandom random) {
        double[][] gradient = new double[weights.length][Template.SIZE];
        HoldWeights current = new HoldWeights(weights);
        for (HoldTrainer.Prepared one : batch) {
            double[] slope = slope(one, current.of(one.circles()), asWritten, random);
            for (HoldWeights.Circle circle : one.circles()) {
                for (int feature = 0; feature < slope.length; feature++) {
                    gradient[circle.ordinal()][feature] += slope[feature];
                }
            }
        }
        return gradient;
    }

    /** By feature: how the logarithm of the truth's probability grows with its weight, some features left out. */
    private double[] slope(HoldTrainer.Prepared one, double[] sum, boolean asWritten, SplittableRandom random) {
        double[] kept = settings.localOnly() ? null : kept(random);
        scale(sum, kept);
        double[] slope = new double[Template.SIZE];
        Scores scores = new Scores(one.features(), sum);
        new Expectation(one.features(), scores.only(asWritten ? one.written() : one.truth()))
                .addTo(slope, one.factor());
        new Expectation(one.features(), scores).addTo(slope, -one.factor());
        scale(slope, kept);
        return slope;
    }

    /** By template: 0 if its features are left out, else as much more as makes up for it on average. */
    private static double[] kept(SplittableRandom random) {
        double[] kept = new double[Template.values().length];
        // No public solve has times, so nothing is drawn for what looks at them.
        Arrays.setAll(
                kept,
                template ->
                        Template.values()[template].timed() || random.nextDouble() < LEFT_OUT ? 0 : 1 / (1 - LEFT_OUT));
        return kept;
    }

    private void scale(double[] features, double[] kept) {
        if (kept != null) {
            for (int feature = 0; feature < features.length; feature++) {
                features[feature] *= kept[templates[feature]];
            }
        }
    }

    private void climb(Adam[] climbers, double[][] gradient, int batch) {
        double share = (double) batch / examples.size();
        for (int circle = 0; circle < climbers.length; circle++) {
            double price = circle == 0 ? settings.price() : settings.correctionPrice();
            for (int feature = 0; feature < Template.SIZE; feature++) {
                gradient[circle][feature] = prices[feature] == Double.POSITIVE_INFINITY
                        ? 0
                        : gradient[circle][feature] - price * prices[feature] * share * weights[circle][feature];
            }
            climbers[circle].climb(gradient[circle]);
        }
    }
}
