package fermata.analysis.hold;

import fermata.analysis.event.Hand;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * How one solver differs from everybody: weights that are added to everybody's, learned from the solves of which the
 * solver said what the hand did. They are the ones that make those holds likeliest, less a quadratic price on each: a
 * solver of whom little is known is read like everybody.
 *
 * <p>Immutable, thread-safe. Source: adapting a conditional model by a prior about the weights learned from others
 * (Chelba and Acero 2006, adaptation of a maximum entropy capitalizer). Deterministic: drawn from a fixed seed. Cost of
 * learning: some 5 ms an example and pass, of which there are {@value #PASSES}; memory 1 MB an example.
 */
public final class Habits {
    /** Nobody corrected anything. */
    public static final Habits NONE = new Habits(new double[Template.SIZE], 0);

    private static final int PASSES = 12;
    /** The newest ones: what a solver did a year ago may be a habit no more. */
    private static final int MOST_SOLVES = 40;

    private static final int BATCH = 8;
    private static final double PRICE = 0.5;
    private static final double STEP = 0.06;

    private final double[] weights;
    private final int solves;

    /** An example, by one way to read a hand. */
    private record Taught(Features features, boolean[][] truth, double[] everybody, double factor) {}

    private Habits(double[] weights, int solves) {
        this.weights = weights;
        this.solves = solves;
    }

    /**
     * Learns from a solver's corrected solves, oldest first.
     *
     * @param everybody the model that they are added to
     */
    public static Habits learn(HoldModel everybody, List<HoldExample> corrected) {
        if (corrected.isEmpty()) {
            return NONE;
        }
        List<Taught> taught = new ArrayList<>();
        corrected
                .subList(Math.max(0, corrected.size() - MOST_SOLVES), corrected.size())
                .forEach(example -> add(everybody, HoldTrainer.leftOrTwo(example), taught));
        return new Habits(climb(taught), corrected.size());
    }

    private static void add(HoldModel everybody, HoldExample example, List<Taught> taught) {
        HoldTrack track = example.track();
        StreamFacts facts = new StreamFacts(example.start(), track.turns());
        Features features = new Features(facts, everybody.book(), "");
        boolean[][] truth = HoldInference.seenAt(
                features,
                IntStream.range(0, track.size())
                        .map(turn -> track.layer(turn).ordinal())
                        .toArray());
        List<List<HoldWeights.Circle>> ways = HoldWeights.Circle.ways(example.hand() == Hand.LEFT, facts.edgesFirst());
        ways.forEach(way ->
                taught.add(new Taught(features, truth, everybody.weights().of(way), 1.0 / ways.size())));
    }

    /** In Adam's steps (Kingma and Ba 2015), which become smaller to the end. */
    private static double[] climb(List<Taught> taught) {
        double[] weights = new double[Template.SIZE];
        double[] mean = new double[Template.SIZE];
        double[] square = new double[Template.SIZE];
        SplittableRandom random = new SplittableRandom(5);
        int batches = (taught.size() + BATCH - 1) / BATCH;
        for (int step = 1; step <= PASSES * batches; step++) {
            int batch = (step - 1) % batches;
            if (batch == 0) {
                shuffle(taught, random);
            }
            List<Taught> some = taught.subList(batch * BATCH, Math.min(taught.size(), (batch + 1) * BATCH));
            double[] slope = slope(some, weights);
            double share = (double) some.size() / taught.size();
            double rate = STEP * 0.5 * (1 + Math.cos(Math.PI * step / (PASSES * batches)));
            double forget1 = 1 - Math.pow(0.9, step);
            double forget2 = 1 - Math.pow(0.99, step);
            for (int feature = 0; feature < weights.length; feature++) {
                double up = slope[feature] - PRICE * Template.of(feature).price() * share * weights[feature];
                mean[feature] = 0.9 * mean[feature] + 0.1 * up;
                square[feature] = 0.99 * square[feature] + 0.01 * up * up;
                weights[feature] += rate * (mean[feature] / forget1) / (Math.sqrt(square[feature] / forget2) + 1e-3);
            }
        }
        return weights;
    }

    private static void shuffle(List<Taught> taught, SplittableRandom random) {
        for (int place = taught.size() - 1; place > 0; place--) {
            Collections.swap(taught, place, random.nextInt(place + 1));
        }
    }

    /** By feature: how the logarithm of the truth's probability grows with its weight. */
    private static double[] slope(List<Taught> some, double[] weights) {
        double[] slope = new double[Template.SIZE];
        for (Taught one : some) {
            double[] sum = one.everybody().clone();
            for (int feature = 0; feature < sum.length; feature++) {
                sum[feature] += weights[feature];
            }
            Scores scores = new Scores(one.features(), sum);
            new Expectation(one.features(), scores.only(one.truth())).addTo(slope, one.factor());
            new Expectation(one.features(), scores).addTo(slope, -one.factor());
        }
        return slope;
    }

    /** Whether nothing was learned. */
    public boolean isNone() {
        return solves == 0;
    }

    /** How many corrected solves there were. */
    public int solves() {
        return solves;
    }

    /** A model of this solver. Cost: one pass over all features. */
    HoldModel join(HoldModel everybody) {
        return new HoldModel(everybody.weights().plus(weights), everybody.book());
    }
}
