package fermata.analysis.regrip;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Face;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Infers where a hand takes hold anew. Pure; thread-safe.
 *
 * <p>Cost: linear in turns, some 100 sums a turn for one hand and 500 for two; the distribution of the count takes
 * a further factor of how many regrips are possible at all, some twenty.
 */
public final class Regrips {
    /** How often the cube is taken up with the wrist already set to one side or the other. */
    private static final double BEGUN_ASIDE = 0.1;

    private final List<GripStep> steps = new ArrayList<>();
    /** How likely each state is before each turn, by all that came before. */
    private final double[][] before;
    /** As each turn begins. */
    private final double[][] settled;
    /** The weight of all that comes after each turn, by the state it leaves. */
    private final double[][] after;

    private Regrips(Kinematics kinematics, List<GripTurn> turns) {
        this.before = new double[turns.size() + 1][GripState.COUNT];
        this.settled = new double[turns.size()][];
        this.after = new double[turns.size()][];
        before[0][GripState.FRESH] = 1 - 2 * BEGUN_ASIDE;
        before[0][GripState.of(Left.HOME, 1, 0)] = BEGUN_ASIDE;
        before[0][GripState.of(Left.HOME, -1, 0)] = BEGUN_ASIDE;
        for (int turn = 0; turn < turns.size(); turn++) {
            GripStep step = new GripStep(kinematics, turns.get(turn), turn == 0, before[turn]);
            steps.add(step);
            settled[turn] = step.settle(before[turn]);
            for (GripStep.Arc arc : step.arcs()) {
                before[turn + 1][arc.to()] += settled[turn][arc.at()] * arc.weight();
            }
            normalise(before[turn + 1]);
        }
        double[] ahead = new double[GripState.COUNT];
        Arrays.fill(ahead, 1);
        for (int turn = turns.size() - 1; turn >= 0; turn--) {
            after[turn] = ahead;
            double[] beginning = new double[GripState.COUNT];
            for (GripStep.Arc arc : steps.get(turn).arcs()) {
                beginning[arc.at()] += arc.weight() * ahead[arc.to()];
            }
            ahead = steps.get(turn).ahead(beginning);
            normalise(ahead);
        }
    }

    /**
     * Reads a solve.
     *
     * @param hand which hand; of an unknown one nothing is said
     * @param turns what it did, in order
     */
    public static RegripReading read(Hand hand, List<GripTurn> turns) {
        return of(hand, turns).map(Regrips::reading).orElse(RegripReading.NONE);
    }

    /** What {@link #read} says of each turn, without how many there were in all, which costs as much again. */
    static List<RegripReading.AtTurn> readTurns(Hand hand, List<GripTurn> turns) {
        return of(hand, turns).map(Regrips::turns).orElse(List.of());
    }

    private static Optional<Regrips> of(Hand hand, List<GripTurn> turns) {
        if (turns.isEmpty()) {
            return Optional.empty();
        }
        return switch (hand) {
            case LEFT -> Optional.of(new Regrips(Kinematics.ONE_HAND, turns));
            case RIGHT ->
                Optional.of(new Regrips(
                        Kinematics.ONE_HAND,
                        turns.stream().map(Regrips::mirrored).toList()));
            case TWO -> Optional.of(new Regrips(Kinematics.TWO_HANDS, turns));
            case UNKNOWN -> Optional.empty();
        };
    }

    private static void normalise(double[] weights) {
        double sum = 0;
        for (double weight : weights) {
            sum += weight;
        }
        for (int state = 0; state < weights.length; state++) {
            weights[state] /= sum;
        }
    }

    private RegripReading reading() {
        List<RegripReading.AtTurn> turns = turns();
        double expected = 0;
        for (RegripReading.AtTurn at : turns) {
            expected += at.probability();
        }
        return new RegripReading(turns, expected, new RegripCount(steps, before[0]).central());
    }

    private List<RegripReading.AtTurn> turns() {
        return IntStream.range(0, steps.size()).mapToObj(this::at).toList();
    }

    private RegripReading.AtTurn at(int turn) {
        Double[] fingers = new Double[Finger.values().length];
        Arrays.fill(fingers, 0.0);
        double regrip = 0;
        double all = 0;
        for (GripStep.Arc arc : steps.get(turn).arcs()) {
            double weight = settled[turn][arc.at()] * arc.weight() * after[turn][arc.to()];
            all += weight;
            regrip += arc.regrip() ? weight : 0;
            fingers[arc.finger().ordinal()] += weight;
        }
        for (int finger = 0; finger < fingers.length; finger++) {
            fingers[finger] /= all;
        }
        return new RegripReading.AtTurn(Math.min(1, regrip / all), List.of(fingers));
    }

    /** What a mirror shows: left for right, and every turn the other way. */
    private static GripTurn mirrored(GripTurn turn) {
        List<Double> layers = new ArrayList<>(turn.layers());
        layers.set(Face.R.ordinal(), turn.layers().get(Face.L.ordinal()));
        layers.set(Face.L.ordinal(), turn.layers().get(Face.R.ordinal()));
        return new GripTurn(
                turn.move().mirrored(),
                turn.quarters().stream().map(sense -> -sense).toList(),
                layers,
                turn.rotated(),
                turn.rested(),
                turn.evidence());
    }
}
