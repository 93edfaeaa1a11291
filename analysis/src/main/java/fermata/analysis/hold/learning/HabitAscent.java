package fermata.analysis.hold.learning;

import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.lattice.Expectation;
import fermata.analysis.hold.lattice.Features;
import fermata.analysis.hold.lattice.Scores;
import fermata.analysis.hold.lattice.Template;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;

/**
 * Climbs to the weights of one solver, in {@linkplain Adam Adam's} steps. One use.
 *
 * <p>With a few solves everything can be learned by heart, so kinds of features are left out of a lesson by chance, as
 * when everybody's weights are learned. Cost: some 5 ms a lesson and pass, of which there are {@value #PASSES}; memory
 * 1 MB a lesson.
 */
final class HabitAscent {
    private static final int PASSES = 24;
    private static final int BATCH = 8;
    /** Of a few solves there are few batches, and as far to go. */
    private static final int FEWEST_STEPS = 48;

    private static final double PRICE = 0.25;
    /** Chosen on made-up solvers and evenings that are not reported, as the price and the passes were. */
    private static final double LEFT_OUT = 0.4;

    private static final int[] TEMPLATES = new int[Template.SIZE];
    private static final double[] PRICES = new double[Template.SIZE];

    static {
        Arrays.setAll(TEMPLATES, feature -> Template.of(feature).ordinal());
        Arrays.setAll(PRICES, feature -> PRICE * Template.of(feature).price());
    }

    private final List<Lesson> lessons;
    private final double[] start;
    private final double[] weights;
    private final SplittableRandom random = new SplittableRandom(5);

    /**
     * A solve to learn from.
     *
     * @param features of the solve
     * @param truth by turn and hold, whether the layer was seen there
     * @param evidence of the times
     * @param ways everybody's weights by each way in which such a solve is read
     * @param factor how many times it counts
     */
    record Lesson(Features features, boolean[][] truth, HoldEvidence evidence, List<double[]> ways, double factor) {}

    /** From these weights; what differs from them has its price. */
    HabitAscent(List<Lesson> lessons, double[] start) {
        this.lessons = new ArrayList<>(lessons);
        this.start = start;
        this.weights = start.clone();
    }

    /** Cost: all passes over all lessons. */
    double[] run() {
        int batches = (lessons.size() + BATCH - 1) / BATCH;
        int steps = Math.max(FEWEST_STEPS, PASSES * batches);
        Adam climber = new Adam(weights, steps);
        for (int step = 0; step < steps; step++) {
            int batch = step % batches;
            if (batch == 0) {
                shuffle();
            }
            List<Lesson> some = lessons.subList(batch * BATCH, Math.min(lessons.size(), (batch + 1) * BATCH));
            double[] slope = new double[Template.SIZE];
            some.forEach(lesson -> addSlope(lesson, slope));
            takeOffPrices(slope, (double) some.size() / lessons.size());
            climber.climb(slope);
        }
        return weights;
    }

    private void shuffle() {
        for (int place = lessons.size() - 1; place > 0; place--) {
            Collections.swap(lessons, place, random.nextInt(place + 1));
        }
    }

    /** By feature: how the logarithm of the truth's probability grows with its weight, by one of the ways. */
    private void addSlope(Lesson lesson, double[] slope) {
        double[] kept = new double[Template.values().length];
        Arrays.setAll(kept, template -> random.nextDouble() < LEFT_OUT ? 0 : 1 / (1 - LEFT_OUT));
        double[] everybody = lesson.ways().get(random.nextInt(lesson.ways().size()));
        double[] sum = new double[Template.SIZE];
        Arrays.setAll(sum, feature -> kept[TEMPLATES[feature]] * (everybody[feature] + weights[feature]));
        Scores scores = new Scores(lesson.features(), sum);
        if (lesson.evidence() != HoldEvidence.NONE) {
            scores.join(lesson.evidence());
        }
        double[] own = new double[Template.SIZE];
        new Expectation(lesson.features(), scores.only(lesson.truth())).addTo(own, lesson.factor());
        new Expectation(lesson.features(), scores).addTo(own, -lesson.factor());
        for (int feature = 0; feature < own.length; feature++) {
            slope[feature] += kept[TEMPLATES[feature]] * own[feature];
        }
    }

    private void takeOffPrices(double[] slope, double share) {
        for (int feature = 0; feature < slope.length; feature++) {
            slope[feature] -= PRICES[feature] * share * (weights[feature] - start[feature]);
        }
    }
}
