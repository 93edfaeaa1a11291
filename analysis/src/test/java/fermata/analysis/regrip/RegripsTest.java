package fermata.analysis.regrip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What needs a regrip is common practice, no source; that the sums are right is checked by listing every chain. */
class RegripsTest {
    /** Moves with rotations between them, all certain. */
    static List<GripTurn> turns(String words) {
        List<GripTurn> turns = new ArrayList<>();
        double rotated = 0;
        for (Move move : Sequence.parse(words).moves()) {
            if (move instanceof Move.Rotation) {
                rotated = 1;
                continue;
            }
            int quarters = move.quarters() == 3 ? -1 : move.quarters();
            List<Integer> senses = quarters == 2 ? List.of(2, -2) : List.of(quarters);
            turns.add(new GripTurn(move, senses, certain(move), rotated, false, 0));
            rotated = 0;
        }
        return turns;
    }

    private static List<Double> certain(Move move) {
        Double[] layers = new Double[6];
        Arrays.fill(layers, 0.0);
        Face face = move instanceof Move.SliceTurn slice
                ? slice.slice().follows()
                : Face.of(Character.toUpperCase(move.letter().charAt(0)));
        layers[(move instanceof Move.Wide ? face.opposite() : face).ordinal()] = 1.0;
        return List.of(layers);
    }

    private static double regrip(Hand hand, String words, int turn) {
        return Regrips.read(hand, turns(words)).turns().get(turn).probability();
    }

    /** The reference's list of what needs a regrip and what does not: common practice, no source. */
    @ParameterizedTest
    @CsvSource({
        "R U R' U' R U R' U', 2, no",
        "R U R' U' R U R' U', 6, no",
        "R U R U R U R U, 2, yes",
        "R U R U R U R U, 4, yes",
        "R R, 1, yes",
        "R U2 R2, 2, no",
        "R U y R, 2, yes",
        "R U B U, 2, yes",
        "R U L U, 2, yes",
        "R U F2 U, 2, yes",
        "R U R' F, 3, no",
    })
    void shouldSuspectWhatCommonPracticeSaysWhenOneHandHolds(String words, int turn, String needed) {
        double probability = regrip(Hand.LEFT, words, turn);

        if (needed.equals("yes")) {
            assertThat(probability).isGreaterThan(0.6);
        } else {
            assertThat(probability).isLessThan(0.25);
        }
    }

    @Test
    void shouldPreferASenseOfAHalfTurnThatTheWristCanMake() {
        // After R the wrist stands ahead: R2 made backwards needs no regrip, and two quarters forwards do.
        List<GripTurn> open = turns("R U R2");
        List<GripTurn> forwards = new ArrayList<>(open);
        forwards.set(2, new GripTurn(open.get(2).move(), List.of(2), open.get(2).layers(), 0, false, 0));

        assertThat(Regrips.read(Hand.LEFT, forwards).turns().get(2).probability())
                .isGreaterThan(0.9);
        assertThat(Regrips.read(Hand.LEFT, open).turns().get(2).probability()).isLessThan(0.6);
    }

    @Test
    void shouldSayOfARightHandWhatAMirrorShowsOfALeftOne() {
        RegripReading left = Regrips.read(Hand.LEFT, turns("R U R U2 F' r D M E S y R2 B l U'"));
        RegripReading right = Regrips.read(Hand.RIGHT, turns("L' U' L' U2 F l' D' M E' S' y' L2 B' r' U"));

        assertThat(right).isEqualTo(left);
    }

    @Test
    void shouldAskLessOfTwoHandsThanOfOne() {
        String words = "R U R' L' U' L R U B U' D R2 y R U R'";

        assertThat(Regrips.read(Hand.TWO, turns(words)).expected())
                .isLessThan(Regrips.read(Hand.LEFT, turns(words)).expected());
    }

    @Test
    void shouldSayNothingWhenTheHandIsNotKnown() {
        assertThat(Regrips.read(Hand.UNKNOWN, turns("R U R' U'"))).isEqualTo(RegripReading.NONE);
        assertThat(Regrips.read(Hand.LEFT, List.of())).isEqualTo(RegripReading.NONE);
    }

    @Test
    void shouldNameTheFingersThatMayHaveMadeATurn() {
        List<Double> fingers =
                Regrips.read(Hand.LEFT, turns("R U F")).turns().get(2).fingers();

        assertThat(fingers.get(Finger.THUMB.ordinal())).isGreaterThan(0.4);
        assertThat(fingers.get(Finger.INDEX.ordinal())).isGreaterThan(0.2);
        assertThat(fingers.stream().mapToDouble(Double::doubleValue).sum()).isCloseTo(1, within(1e-12));
    }

    /** Bayes' rule: evidence on one interval multiplies the odds there, whatever the chain is. */
    @ParameterizedTest
    @ValueSource(doubles = {-3, -0.5, 0, 1.2, 3})
    void shouldMultiplyTheOddsByTheRatioOfTheInterval(double evidence) {
        List<GripTurn> turns = turns("R U F R U D R y U R R");
        double before = Regrips.read(Hand.LEFT, turns).turns().get(5).probability();
        turns.set(5, withEvidence(turns.get(5), evidence));

        double after = Regrips.read(Hand.LEFT, turns).turns().get(5).probability();

        assertThat(after / (1 - after)).isCloseTo(before / (1 - before) * Math.exp(evidence), within(1e-9));
    }

    /** A doubt that the last turn alone has is a mixture of what each reading of it says. */
    @Test
    void shouldMixTheReadingsWhenALayerIsInDoubt() {
        List<GripTurn> turns = turns("R U R");
        List<Double> mixed = List.of(0.3, 0.7, 0.0, 0.0, 0.0, 0.0);
        turns.set(2, new GripTurn(turns.get(2).move(), List.of(1), mixed, 0, false, 0));

        double probability = Regrips.read(Hand.LEFT, turns).turns().get(2).probability();

        assertThat(probability)
                .isCloseTo(0.3 * regrip(Hand.LEFT, "R U U", 2) + 0.7 * regrip(Hand.LEFT, "R U R", 2), within(1e-12));
    }

    @Test
    void shouldLetTheHandComeToRestWhereAStageBegins() {
        List<GripTurn> turns = turns("R U R");
        GripTurn last = turns.get(2);
        turns.set(2, new GripTurn(last.move(), last.quarters(), last.layers(), 0, true, 0));

        assertThat(Regrips.read(Hand.LEFT, turns).turns().get(2).probability())
                .isLessThan(0.4 * regrip(Hand.LEFT, "R U R", 2));
    }

    /** Every chain of a short solve, one by one, with doubts about everything. */
    @ParameterizedTest
    @EnumSource(
            value = Hand.class,
            names = {"LEFT", "TWO"})
    void shouldAgreeWithListingEveryChain(Hand hand) {
        for (long seed = 0; seed < 20; seed++) {
            List<GripTurn> turns = anyTurns(new SplittableRandom(seed), 4);
            RegripReading reading = Regrips.read(hand, turns);

            Chains chains = new Chains(hand == Hand.LEFT ? Kinematics.ONE_HAND : Kinematics.TWO_HANDS, turns);

            for (int turn = 0; turn < turns.size(); turn++) {
                assertThat(reading.turns().get(turn).probability())
                        .as("turn %d, seed %d", turn, seed)
                        .isCloseTo(chains.regrip[turn] / chains.all, within(1e-9));
            }
            assertThat(reading.count().low()).as("seed %d", seed).isEqualTo(chains.quantile(0.025));
            assertThat(reading.count().high()).as("seed %d", seed).isEqualTo(chains.quantile(0.975));
            assertThat(reading.expected()).isCloseTo(chains.mean(), within(1e-9));
        }
    }

    private static List<GripTurn> anyTurns(SplittableRandom random, int count) {
        String[] words = {"U", "R'", "F", "D", "L", "B'", "r", "M", "R2", "F2", "u'"};
        List<GripTurn> turns = new ArrayList<>();
        for (int turn = 0; turn < count; turn++) {
            GripTurn plain = turns(words[random.nextInt(words.length)]).get(0);
            Double[] layers = new Double[6];
            Arrays.fill(layers, 0.0);
            layers[random.nextInt(6)] = 0.2;
            layers[random.nextInt(6)] += 0.8;
            turns.add(new GripTurn(
                    plain.move(),
                    plain.quarters(),
                    List.of(layers),
                    random.nextInt(3) == 0 ? random.nextDouble() : 0,
                    random.nextInt(3) == 0,
                    4 * random.nextDouble() - 2));
        }
        return turns;
    }

    /** Sums over all chains, each followed on its own. */
    private static final class Chains {
        private final List<List<Whole>> steps = new ArrayList<>();
        private final double[] regrip;
        private final double[] counts;
        private double all;

        private Chains(Kinematics kinematics, List<GripTurn> turns) {
            turns.forEach(turn -> steps.add(wholes(kinematics, turn, steps.isEmpty())));
            regrip = new double[turns.size()];
            counts = new double[turns.size() + 1];
            follow(0, GripState.FRESH, 0.8, new ArrayList<>());
            follow(0, GripState.of(Left.HOME, 1, 0), 0.1, new ArrayList<>());
            follow(0, GripState.of(Left.HOME, -1, 0), 0.1, new ArrayList<>());
        }

        private void follow(int turn, int state, double weight, List<Boolean> regrips) {
            if (turn == steps.size()) {
                all += weight;
                counts[(int) regrips.stream().filter(one -> one).count()] += weight;
                for (int which = 0; which < regrips.size(); which++) {
                    regrip[which] += regrips.get(which) ? weight : 0;
                }
                return;
            }
            for (Whole whole : steps.get(turn)) {
                if (whole.from() == state) {
                    regrips.add(whole.arc().regrip());
                    follow(turn + 1, whole.arc().to(), weight * whole.weight(), regrips);
                    regrips.remove(turn);
                }
            }
        }

        private double mean() {
            double sum = 0;
            for (int count = 0; count < counts.length; count++) {
                sum += count * counts[count] / all;
            }
            return sum;
        }

        private double quantile(double share) {
            double below = 0;
            int count = -1;
            while (below <= share) {
                count++;
                below += counts[count] / all;
            }
            return count;
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = Hand.class,
            names = {"LEFT", "TWO"})
    void shouldLeaveEveryStateWithProbabilityOneWhenNothingIsKnownOfTheInterval(Hand hand) {
        Kinematics kinematics = hand == Hand.LEFT ? Kinematics.ONE_HAND : Kinematics.TWO_HANDS;
        for (GripTurn turn : anyTurns(new SplittableRandom(5), 30)) {
            double[] leaving = new double[GripState.COUNT];
            wholes(kinematics, withEvidence(turn, 0), false).forEach(whole -> leaving[whole.from()] += whole.weight());

            for (double sum : leaving) {
                assertThat(sum).isCloseTo(1, within(1e-12));
            }
        }
    }

    /** A way from one turn to the next: how the hand settled, and what it made. */
    private record Whole(int from, GripStep.Arc arc, double weight) {}

    private static List<Whole> wholes(Kinematics kinematics, GripTurn turn, boolean first) {
        double[] any = new double[GripState.COUNT];
        Arrays.fill(any, 1);
        GripStep step = new GripStep(kinematics, turn, first, any);
        List<Whole> wholes = new ArrayList<>();
        for (int from = 0; from < GripState.COUNT; from++) {
            double[] only = new double[GripState.COUNT];
            only[from] = 1;
            double[] settled = step.settle(only);
            for (GripStep.Arc arc : step.arcs()) {
                wholes.add(new Whole(from, arc, settled[arc.at()] * arc.weight()));
            }
        }
        return wholes.stream().filter(whole -> whole.weight() > 0).toList();
    }

    private static GripTurn withEvidence(GripTurn turn, double logRatio) {
        return new GripTurn(turn.move(), turn.quarters(), turn.layers(), turn.rotated(), turn.rested(), logRatio);
    }
}
