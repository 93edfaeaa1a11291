package fermata.analysis.regrip;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Slice;
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

    private final List<List<GripStep.Arc>> steps = new ArrayList<>();
    private final double[][] forward;
    private final double[][] backward;

    private Regrips(Kinematics kinematics, List<GripTurn> turns) {
        this.forward = new double[turns.size() + 1][GripStep.STATES];
        this.backward = new double[turns.size() + 1][GripStep.STATES];
        forward[0][GripStep.state(Left.HOME, 0, 0)] = 1 - 2 * BEGUN_ASIDE;
        forward[0][GripStep.state(Left.HOME, 1, 0)] = BEGUN_ASIDE;
        forward[0][GripStep.state(Left.HOME, -1, 0)] = BEGUN_ASIDE;
        for (int turn = 0; turn < turns.size(); turn++) {
            steps.add(GripStep.arcs(kinematics, turns.get(turn), turn == 0, reached(forward[turn])));
            for (GripStep.Arc arc : steps.get(turn)) {
                forward[turn + 1][arc.to()] += forward[turn][arc.from()] * arc.weight();
            }
            normalise(forward[turn + 1]);
        }
        Arrays.fill(backward[turns.size()], 1);
        for (int turn = turns.size() - 1; turn >= 0; turn--) {
            for (GripStep.Arc arc : steps.get(turn)) {
                backward[turn][arc.from()] += arc.weight() * backward[turn + 1][arc.to()];
            }
            normalise(backward[turn]);
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

    private static boolean[] reached(double[] weights) {
        boolean[] reached = new boolean[weights.length];
        for (int state = 0; state < weights.length; state++) {
            reached[state] = weights[state] > 0;
        }
        return reached;
    }

    private static void normalise(double[] weights) {
        double sum = Arrays.stream(weights).sum();
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
        return new RegripReading(turns, expected, new RegripCount(steps, forward[0]).central());
    }

    private List<RegripReading.AtTurn> turns() {
        return IntStream.range(0, steps.size()).mapToObj(this::at).toList();
    }

    private RegripReading.AtTurn at(int turn) {
        Double[] fingers = new Double[Finger.values().length];
        Arrays.fill(fingers, 0.0);
        double regrip = 0;
        double all = 0;
        for (GripStep.Arc arc : steps.get(turn)) {
            double weight = forward[turn][arc.from()] * arc.weight() * backward[turn + 1][arc.to()];
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
                mirrored(turn.move()),
                turn.quarters().stream().map(sense -> -sense).toList(),
                layers,
                turn.rotated(),
                turn.rested(),
                turn.evidence());
    }

    private static Move mirrored(Move move) {
        int quarters = 4 - move.quarters();
        if (move instanceof Move.Layer layer) {
            return new Move.Layer(Turn.of(mirrored(layer.turn().face()), quarters));
        } else if (move instanceof Move.Wide wide) {
            return new Move.Wide(mirrored(wide.face()), quarters);
        }
        Move.SliceTurn slice = (Move.SliceTurn) move;
        // M follows L, and in the mirror it follows R: the same layer turned the same way.
        return new Move.SliceTurn(slice.slice(), slice.slice() == Slice.M ? slice.quarters() : quarters);
    }

    private static Face mirrored(Face face) {
        return face == Face.L || face == Face.R ? face.opposite() : face;
    }
}
