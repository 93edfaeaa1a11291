package fermata.analysis.hold;

import fermata.analysis.event.Hand;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Learns {@link HoldWeights} from examples: the weights that make the true layers likeliest among all readings,
 * less a quadratic price on each weight (a conditional random field; all ways to write the same event count
 * together, so it does not matter how a writer wrote it). Steps are Adam's (Kingma and Ba 2015).
 *
 * <p>Deterministic: order from a fixed seed. Cost: about 5 ms an example and pass; memory some 1 MB.
 */
public final class HoldTrainer {
    private static final int BATCH = 8;
    private static final double STEP = 0.06;

    private final Settings settings;
    private final List<Prepared> prepared = new ArrayList<>();
    private final double[][] weights = new double[HoldWeights.Circle.values().length][Template.SIZE];
    private final double[][] mean = new double[weights.length][Template.SIZE];
    private final double[][] square = new double[weights.length][Template.SIZE];
    private final double[] prices = new double[Template.SIZE];

    /**
     * How to learn.
     *
     * @param passes over all examples
     * @param price of a weight's square, for a weight of everybody
     * @param correctionPrice the same for a correction
     * @param oneHandFactor how many times a one-handed example counts
     * @param tiltedFactor how many times a two-handed example counts that is made one-handed by tilting
     * @param localOnly whether to learn from no more than three turns and a rotation at a time, blind to the state
     */
    public record Settings(
            int passes,
            double price,
            double correctionPrice,
            double oneHandFactor,
            double tiltedFactor,
            boolean localOnly) {
        /** What the shipped weights were learned with. */
        public static final Settings USUAL = new Settings(14, 0.5, 1, 2, 0.3, false);

        /** What the Markov model of order two was learned with, which others are held against. */
        public static final Settings MARKOV = new Settings(14, 0.5, 1, 2, 0, true);
    }

    private record Prepared(
            Features features,
            boolean[][] written,
            boolean[][] truth,
            List<HoldWeights.Circle> circles,
            double factor) {}

    private HoldTrainer(List<HoldExample> examples, SequenceBook common, Settings settings) {
        SequenceBook book = common.with(examples);
        this.settings = settings;
        for (int feature = 0; feature < prices.length; feature++) {
            Template template = Template.of(feature);
            prices[feature] = settings.localOnly() && !template.local() ? Double.POSITIVE_INFINITY : template.price();
        }
        SplittableRandom random = new SplittableRandom(11);
        for (HoldExample example : examples) {
            StreamFacts facts = new StreamFacts(example.start(), example.track().turns());
            Features features = new Features(facts, book, example.group());
            boolean oneHand = example.hand() == Hand.LEFT;
            prepare(features, example.track(), oneHand, oneHand ? settings.oneHandFactor() : 1);
            if (!oneHand && settings.tiltedFactor() > 0 && facts.edgesFirst()) {
                HoldTrack tilted = Tilting.of(facts, example.track(), random);
                int from = Tilting.first(facts, StreamFacts.Phase.PAIRS);
                if (tilted.size() > 0) {
                    prepare(
                            new Features(facts, features.covered(), from, from + tilted.size()),
                            tilted,
                            true,
                            settings.tiltedFactor());
                }
            }
        }
    }

    private void prepare(Features features, HoldTrack track, boolean oneHand, double factor) {
        prepared.add(new Prepared(
                features,
                asWritten(track),
                HoldInference.seenAt(
                        features,
                        IntStream.range(0, track.size())
                                .map(turn -> track.layer(turn).ordinal())
                                .toArray()),
                HoldWeights.Circle.of(oneHand, features.facts.edgesFirst()),
                factor));
    }

    /**
     * Learns from all examples: right-handed ones in the mirror, those of an unnamed hand as two-handed.
     *
     * @param common sequences known beforehand; the examples' last layers join them
     */
    public static HoldModel learn(List<HoldExample> given, SequenceBook common, Settings settings) {
        List<HoldExample> examples = given.stream().map(HoldTrainer::leftOrTwo).toList();
        HoldTrainer trainer = new HoldTrainer(examples, common, settings);
        trainer.run();
        return new HoldModel(new HoldWeights(trainer.weights), common.with(examples));
    }

    private static HoldExample leftOrTwo(HoldExample example) {
        return example.hand() == Hand.RIGHT
                ? new HoldExample(Mirror.of(example.start()), Mirror.of(example.track()), Hand.LEFT, example.group())
                : example;
    }

    private static boolean[][] asWritten(HoldTrack track) {
        boolean[][] same = new boolean[track.size()][Holds.COUNT];
        for (int turn = 0; turn < track.size(); turn++) {
            same[turn][track.holds().get(turn).index()] = true;
        }
        return same;
    }

    private void run() {
        SplittableRandom random = new SplittableRandom(7);
        List<Prepared> order = new ArrayList<>(prepared);
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
    }

    private void step(List<Prepared> batch, int step, double rate, boolean asWritten) {
        double[][] gradient = new double[weights.length][Template.SIZE];
        HoldWeights current = new HoldWeights(weights);
        for (Prepared one : batch) {
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
        double share = (double) batch.size() / prepared.size();
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
