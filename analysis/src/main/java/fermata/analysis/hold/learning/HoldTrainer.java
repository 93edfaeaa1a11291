package fermata.analysis.hold.learning;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.Holds;
import fermata.analysis.hold.lattice.Features;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.lattice.HoldWeights;
import fermata.analysis.hold.lattice.Template;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.analysis.hold.sequence.StreamFacts;
import fermata.analysis.hold.sequence.Tilting;
import fermata.decoder.orientation.Mirror;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Learns {@link HoldWeights} from examples: the weights that make the true layers likeliest among all readings,
 * less a quadratic price on each weight (a conditional random field; all ways to write the same event count
 * together, so it does not matter how a writer wrote it).
 *
 * <p>Learned is several times from parts of the examples, and the weights' mean taken: a pool of the models' logarithms
 * (Smith, Cohn and Osborne 2005, logarithmic opinion pools for conditional random fields) that is itself one model, and
 * depends less on which few solves there are. Deterministic: drawn from a fixed seed. Cost: about 1 ms an example and
 * pass; memory some 1 MB an example.
 */
public final class HoldTrainer {
    /** The share of the examples in a part. */
    private static final double PART = 2.0 / 3;

    /**
     * What is learned from so few solves is surer of itself than it should be. Chosen on deals of folds that are not
     * reported; the Markov model is not too sure.
     */
    private static final double TRUST = 0.9;

    private final Settings settings;
    private final List<Prepared> prepared = new ArrayList<>();
    private final double[] prices = new double[Template.SIZE];

    /**
     * How to learn.
     *
     * @param parts how many times to learn, each from a part of the examples drawn anew; 1 for once from all
     * @param passes over the examples of a part
     * @param price of a weight's square, for a weight of everybody
     * @param correctionPrice the same for a correction
     * @param oneHandFactor how many times a one-handed example counts
     * @param tiltedFactor how many times a two-handed example counts that is made one-handed by tilting
     * @param localOnly whether to learn from no more than three turns and a rotation at a time, blind to the state
     */
    public record Settings(
            int parts,
            int passes,
            double price,
            double correctionPrice,
            double oneHandFactor,
            double tiltedFactor,
            boolean localOnly) {
        /** What the shipped weights were learned with. */
        public static final Settings USUAL = new Settings(6, 14, 0.5, 2, 2, 0.3, false);

        /** What the Markov model of order two was learned with, which others are held against. */
        public static final Settings MARKOV = new Settings(1, 14, 0.5, 1, 2, 0, true);
    }

    /** An example as it is learned from. */
    record Prepared(
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
        return new HoldModel(new HoldWeights(trainer.run(), settings.localOnly() ? 1 : TRUST), common.with(examples));
    }

    static HoldExample leftOrTwo(HoldExample example) {
        return example.hand() == Hand.RIGHT
                ? new HoldExample(
                        Mirror.of(example.start()),
                        example.track().mirrored(),
                        Hand.LEFT,
                        example.group(),
                        example.micros())
                : example;
    }

    private static boolean[][] asWritten(HoldTrack track) {
        boolean[][] same = new boolean[track.size()][Holds.COUNT];
        for (int turn = 0; turn < track.size(); turn++) {
            same[turn][track.holds().get(turn).index()] = true;
        }
        return same;
    }

    /** Learns from parts of the examples in turn; the mean of the weights is the answer. */
    private double[][] run() {
        SplittableRandom random = new SplittableRandom(7);
        double[][] sum = new double[HoldWeights.Circle.values().length][Template.SIZE];
        for (int part = 0; part < settings.parts(); part++) {
            SplittableRandom draw = random.split();
            List<Prepared> some = prepared.stream()
                    .filter(one -> settings.parts() == 1 || draw.nextDouble() < PART)
                    .toList();
            if (!some.isEmpty()) {
                addTo(sum, new Ascent(some, settings, prices).run(draw));
            }
        }
        return sum;
    }

    private void addTo(double[][] sum, double[][] weights) {
        for (int circle = 0; circle < sum.length; circle++) {
            for (int feature = 0; feature < Template.SIZE; feature++) {
                sum[circle][feature] += weights[circle][feature] / settings.parts();
            }
        }
    }
}
