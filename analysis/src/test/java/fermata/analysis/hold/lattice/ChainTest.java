package fermata.analysis.hold.lattice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.hold.Holds;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.analysis.hold.sequence.StreamFacts;
import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChainTest {
    /** Russell and Norvig, Artificial Intelligence, section on inference in temporal models: rain and umbrellas. */
    @Test
    void shouldGiveTheTextbookSmoothingWhenItRainsForTwoDays() {
        Scores scores = new Scores(2);
        boolean[][] rainOrNot = new boolean[2][Holds.COUNT];
        for (int day = 0; day < 2; day++) {
            rainOrNot[day][0] = true;
            rainOrNot[day][1] = true;
            for (int age = 0; age < Features.AGES; age++) {
                double stay = day == 0 ? 0 : Math.log(0.7);
                scores.hold[day][age] = Math.log(0.9) + stay;
                scores.hold[day][Features.AGES + age] = Math.log(0.2) + stay;
            }
        }
        Arrays.setAll(
                scores.rotation[1],
                change ->
                        change / Holds.COUNT == change % Holds.COUNT ? Double.NEGATIVE_INFINITY : Math.log(0.3 / 0.7));
        Chain chain = new Chain(scores.only(rainOrNot));

        assertThat(rain(chain, 0)).isCloseTo(0.883, within(5e-4));
        assertThat(rain(chain, 1)).isCloseTo(0.883, within(5e-4));
    }

    private static double rain(Chain chain, int day) {
        double rain = 0;
        for (int age = 0; age < Features.AGES; age++) {
            rain += chain.state(day, age);
        }
        return rain;
    }

    @ParameterizedTest
    @ValueSource(strings = {"R U F", "L R' U", "U U' R", "F B L"})
    void shouldAgreeWithEnumerationWhenStreamsAreShort(String text) {
        Sequence sequence = Sequence.parse(text);
        Features features = features(sequence);
        Scores scores = new Scores(features, weights(text.hashCode()));
        Chain chain = new Chain(scores);
        double total = Double.NEGATIVE_INFINITY;
        double best = Double.NEGATIVE_INFINITY;
        int[] bestHolds = null;
        double[] middle = new double[Holds.COUNT];
        double[][] firstAndLast = new double[6][6];
        for (int path = 0; path < Holds.COUNT * Holds.COUNT * Holds.COUNT; path++) {
            int[] holds = {path / 576, path / 24 % 24, path % 24};
            double score = score(features, scores, holds);
            total = Math.max(total, score) + Math.log1p(Math.exp(-Math.abs(total - score)));
            middle[holds[1]] += Math.exp(score - chain.logTotal);
            firstAndLast[Holds.faceOf(features.seen(0, holds[0]))][Holds.faceOf(features.seen(2, holds[2]))] +=
                    Math.exp(score - chain.logTotal);
            if (score > best) {
                best = score;
                bestHolds = holds;
            }
        }

        assertThat(chain.logTotal).isCloseTo(total, within(1e-9));
        assertThat(BestPath.of(scores)).isEqualTo(bestHolds);
        for (int hold = 0; hold < Holds.COUNT; hold++) {
            double likely = 0;
            for (int age = 0; age < Features.AGES; age++) {
                likely += chain.state(1, hold * Features.AGES + age);
            }
            assertThat(likely).isCloseTo(middle[hold], within(1e-9));
        }
        double[][] pair = new Marginals(features, scores, chain).pair(0, 2);
        for (int layer = 0; layer < 6; layer++) {
            assertThat(pair[layer]).containsExactly(firstAndLast[layer], within(1e-5));
        }
    }

    /** The score of one path by the definition of its states, not by the lattice's recursions. */
    private static double score(Features features, Scores scores, int[] holds) {
        int age = Features.AGES - 1;
        double score = scores.hold[0][holds[0] * Features.AGES + age];
        for (int turn = 1; turn < holds.length; turn++) {
            if (holds[turn] == holds[turn - 1]) {
                age = Math.min(Features.AGES - 1, age + 1);
            } else {
                int change = holds[turn - 1] * Holds.COUNT + holds[turn];
                score += scores.rotation[turn][change]
                        + scores.age[age][features.reading(turn, holds[turn - 1], holds[turn]).broad];
                age = 0;
            }
            score += scores.hold[turn][holds[turn] * Features.AGES + age];
        }
        return score;
    }

    @Test
    void shouldSumToOneAtEveryTurnWhenTheStreamIsLong() {
        Sequence sequence = Sequence.parse("(R U R' U' L F D2 B r U2 M' U)5");
        Features features = features(sequence);
        Chain chain = new Chain(new Scores(features, weights(5)));

        for (int turn = 0; turn < features.size(); turn++) {
            double sum = 0;
            for (int state = 0; state < Chain.STATES; state++) {
                sum += chain.state(turn, state);
            }
            assertThat(sum).isCloseTo(1, within(1e-9));
        }
    }

    /** The gradient of the log total is the expected count: central differences of width 2e-5. */
    @Test
    void shouldExpectWhatTheSlopeOfTheTotalSays() {
        Features features = features(Sequence.parse("R U R' F U2 L' U' x R"));
        double[] weights = weights(11);
        double[] expected = new double[Template.SIZE];
        new Expectation(features, new Scores(features, weights)).addTo(expected, 1);
        SplittableRandom random = new SplittableRandom(3);
        int tried = 0;
        while (tried < 40) {
            int feature = random.nextInt(Template.SIZE);
            if (expected[feature] == 0) {
                continue;
            }
            tried++;
            double before = weights[feature];
            weights[feature] = before + 1e-5;
            double above = new Chain(new Scores(features, weights)).logTotal;
            weights[feature] = before - 1e-5;
            double below = new Chain(new Scores(features, weights)).logTotal;
            weights[feature] = before;
            assertThat(expected[feature]).isCloseTo((above - below) / 2e-5, within(2e-3));
        }
    }

    private static Features features(Sequence sequence) {
        var turns =
                sequence.walk(fermata.decoder.orientation.Orientation.IDENTITY).turns();
        return new Features(
                new StreamFacts(CubeState.SOLVED.apply(turns).inverse(), turns), SequenceBook.parse("R U R' F U2"), "");
    }

    private static double[] weights(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] weights = new double[Template.SIZE];
        Arrays.setAll(weights, feature -> random.nextDouble() * 2 - 1);
        return weights;
    }
}
