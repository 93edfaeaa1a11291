package fermata.analysis.hold.learning;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.GuessedExample;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.Holds;
import fermata.analysis.hold.IntervalEvidence;
import fermata.analysis.hold.lattice.Features;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.lattice.HoldWeights;
import fermata.analysis.hold.lattice.Template;
import fermata.analysis.hold.sequence.StreamFacts;
import fermata.decoder.cube.Face;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * How one solver differs from everybody: weights that are added to everybody's, learned from the solves of which the
 * solver said what the hand did. They are the ones that make those holds likeliest, less a quadratic price on each: a
 * solver of whom little is known is read like everybody. Where the solves have times, how long what takes this solver
 * is learned with the rest, so that what times tell is not told a second time by the turns.
 *
 * <p>Immutable, thread-safe. Source: adapting a conditional model by a prior about the weights learned from others
 * (Chelba and Acero 2006, adaptation of a maximum entropy capitalizer). Deterministic: drawn from a fixed seed. Cost of
 * learning: that of {@link HabitAscent}.
 */
public final class HoldHabits {
    /** Nobody corrected anything. */
    public static final HoldHabits NONE = new HoldHabits(new double[Template.SIZE], 0, false);

    /** The newest ones: what a solver did a year ago may be a habit no more. */
    private static final int MOST_SOLVES = 40;

    /** What was only read, if surely, teaches half as much as what the solver said. */
    private static final double GUESS_FACTOR = 0.5;

    /** Of the face at the first turn what was counted is believed whole, of the hold beyond that by half. */
    private static final double HOLD_BELIEVED = 0.5;

    private final double[] weights;
    private final int solves;
    private final boolean hearTimes;

    private HoldHabits(double[] weights, int solves, boolean hearTimes) {
        this.weights = weights;
        this.solves = solves;
        this.hearTimes = hearTimes;
    }

    /**
     * Learns from a solver's corrected solves, oldest first.
     *
     * @param everybody the model that they are added to
     */
    public static HoldHabits learn(HoldModel everybody, List<HoldExample> corrected) {
        return learn(everybody, corrected, List.of());
    }

    /**
     * Learns from a solver's corrected solves, oldest first, and from others as they were read by what those teach:
     * where the reading is sure it is taken for true, elsewhere nothing is (self-training, Scudder 1965).
     *
     * @param everybody the model that they are added to
     * @param guessed nothing is learned from them alone
     */
    public static HoldHabits learn(HoldModel everybody, List<HoldExample> corrected, List<GuessedExample> guessed) {
        if (corrected.isEmpty()) {
            return NONE;
        }
        List<HoldExample> newest =
                corrected.subList(Math.max(0, corrected.size() - MOST_SOLVES), corrected.size()).stream()
                        .map(HoldTrainer::leftOrTwo)
                        .toList();
        Map<List<HoldWeights.Circle>, double[]> byWay = new HashMap<>();
        List<HabitAscent.Lesson> lessons = new ArrayList<>();
        newest.forEach(example -> lessons.add(lesson(everybody, example, byWay, 1)));
        for (GuessedExample guess : guessed) {
            HabitAscent.Lesson lesson = lesson(everybody, HoldTrainer.leftOrTwo(guess.example()), byWay, GUESS_FACTOR);
            for (int turn = 0; turn < guess.sure().size(); turn++) {
                if (!guess.sure().get(turn)) {
                    Arrays.fill(lesson.truth()[turn], true);
                }
            }
            lessons.add(lesson);
        }
        return new HoldHabits(
                new HabitAscent(lessons, starts(newest)).run(),
                corrected.size(),
                newest.stream().anyMatch(example -> !example.micros().isEmpty()));
    }

    private static HabitAscent.Lesson lesson(
            HoldModel everybody, HoldExample example, Map<List<HoldWeights.Circle>, double[]> byWay, double factor) {
        HoldTrack track = example.track();
        StreamFacts facts = new StreamFacts(example.start(), track.turns());
        HoldEvidence evidence = example.evidence();
        Features features = new Features(facts, everybody.book(), evidence);
        boolean[][] truth = HoldInference.seenAt(
                features,
                IntStream.range(0, track.size())
                        .map(turn -> track.layer(turn).ordinal())
                        .toArray());
        List<double[]> ways = new ArrayList<>();
        HoldWeights.Circle.ways(example.hand() == Hand.LEFT, facts.edgesFirst())
                .forEach(way -> ways.add(byWay.computeIfAbsent(way, everybody.weights()::of)));
        return new HabitAscent.Lesson(features, truth, evidence, ways, factor);
    }

    /**
     * The weights from which learning starts: how the first hold is taken is counted, for a solve has only one, and
     * what the model finds right by luck it learns nothing from. As if each face, or hold, had been seen a sixth of a
     * time.
     */
    private static double[] starts(List<HoldExample> examples) {
        int[] crossAt = new int[Face.values().length];
        int[] holds = new int[Holds.COUNT];
        for (HoldExample example : examples) {
            HoldTrack track = example.track();
            Face cross = new StreamFacts(example.start(), track.turns()).crossFace;
            crossAt[track.holds().get(0).handAt(cross).ordinal()]++;
            holds[track.holds().get(0).index()]++;
        }
        double[] weights = new double[Template.SIZE];
        for (int face = 0; face < crossAt.length; face++) {
            weights[Template.START_CROSS.at(face)] = logRatio(crossAt, face);
        }
        for (int hold = 0; hold < holds.length; hold++) {
            weights[Template.START_HOLD.at(hold)] = HOLD_BELIEVED * logRatio(holds, hold);
        }
        return weights;
    }

    /** By how much one is likelier than if all were alike, as a natural logarithm. */
    private static double logRatio(int[] counts, int one) {
        double all = IntStream.of(counts).sum() + counts.length / 6.0;
        return Math.log((counts[one] + 1 / 6.0) / all * counts.length);
    }

    /** Whether nothing was learned. */
    public boolean isNone() {
        return solves == 0;
    }

    /** How many corrected solves there were. */
    public int solves() {
        return solves;
    }

    /** Whether how long what takes this solver was learned, beside {@link IntervalEvidence} of the usual rotation. */
    public boolean hearTimes() {
        return hearTimes;
    }

    /** A model of this solver. Cost: one pass over all features. */
    public HoldModel join(HoldModel everybody) {
        return isNone() ? everybody : new HoldModel(everybody.weights().plus(weights), everybody.book());
    }
}
