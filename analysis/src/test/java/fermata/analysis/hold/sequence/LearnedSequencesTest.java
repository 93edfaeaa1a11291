package fermata.analysis.hold.sequence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.HandTurn;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.HoldReading;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.PublicSolves;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LearnedSequencesTest {
    /** The same turns of the cube: once by the right, once by a hand that stands at the side of it. */
    private static final String PLAIN = "R U2 R' U' R U' R'";

    private static final String ASIDE = "F U2 F' U' F U' F'";

    private static List<List<SequenceReading>> solves(int plain, double sure, int aside, double unsure) {
        return Stream.concat(
                        Collections.nCopies(plain, SequenceReading.of(PLAIN, sure)).stream(),
                        Collections.nCopies(aside, SequenceReading.of(ASIDE, unsure)).stream())
                .map(List::of)
                .toList();
    }

    private static LearnedSequence learned(int plain, double sure, int aside, double unsure) {
        LearnedSequences learned = LearnedSequences.of(solves(plain, sure, aside, unsure));
        assertThat(learned.all()).hasSize(1);
        return learned.all().get(0);
    }

    /** By hand: one way and something else; logarithms of 0.72 and 0.28, n times, over the root of n. */
    @ParameterizedTest
    @CsvSource({"3, 0.8370", "4, 0.8686", "9, 0.9444", "16, 0.9777"})
    void shouldCountReadingsByTheRootOfTheirNumberWhenTheyAgree(int seen, double probability) {
        LearnedSequence one = learned(seen, 0.8, 0, 0);

        assertThat(one.words()).isEqualTo(PLAIN);
        assertThat(one.seen()).isEqualTo(seen);
        assertThat(one.alike()).isEqualTo(seen);
        assertThat(one.probability()).isCloseTo(probability, within(1e-4));
        assertThat(one.isSure()).isEqualTo(probability >= 0.9);
    }

    /** By hand: 0.9 x 0.9 four times for the one; for the other 0.9 x 0.6 once; what is left is halved. */
    @Test
    void shouldWeighDissentWhenReadingsDiffer() {
        double plain = Math.pow(0.81, 4) * 0.23;
        double aside = Math.pow(0.095, 4) * 0.54;
        double other = Math.pow(0.095, 4) * 0.23;
        double root = 1 / Math.sqrt(5);

        LearnedSequence one = learned(4, 0.9, 1, 0.6);

        assertThat(one.words()).isEqualTo(PLAIN);
        assertThat(one.seen()).isEqualTo(5);
        assertThat(one.alike()).isEqualTo(4);
        assertThat(one.probability())
                .isCloseTo(
                        Math.pow(plain, root) / (Math.pow(plain, root) + Math.pow(aside, root) + Math.pow(other, root)),
                        within(1e-12));
    }

    @Test
    void shouldNotBeSureWhenMoreThanThreeInTenWereReadOtherwise() {
        LearnedSequence one = learned(60, 0.99, 40, 0.99);

        assertThat(one.words()).isEqualTo(PLAIN);
        assertThat(one.probability()).isGreaterThan(0.9);
        assertThat(one.isSure()).isFalse();
        assertThat(learned(75, 0.99, 25, 0.99).isSure()).isTrue();
    }

    @Test
    void shouldTakeNothingFromWhatWasSeenTwice() {
        assertThat(LearnedSequences.of(solves(2, 0.99, 0, 0)).all()).isEmpty();
        assertThat(LearnedSequences.NONE.contradict(List.of(SequenceReading.of(PLAIN, 0.5))))
                .isFalse();
    }

    @Test
    void shouldContradictOnlyWhereSomethingWasReadOtherwiseThanASureOneSays() {
        LearnedSequences sure = LearnedSequences.of(solves(9, 0.95, 0, 0));
        LearnedSequences unsure = LearnedSequences.of(solves(3, 0.5, 0, 0));

        assertThat(sure.contradict(List.of(SequenceReading.of(PLAIN, 0.5)))).isFalse();
        assertThat(sure.contradict(List.of(SequenceReading.of(ASIDE, 0.5)))).isTrue();
        assertThat(sure.contradict(List.of(SequenceReading.of("R U R' U R U2 R'", 0.5))))
                .isFalse();
        assertThat(unsure.contradict(List.of(SequenceReading.of(ASIDE, 0.5)))).isFalse();
    }

    /** All of its turns together get its odds; what was typed is louder. */
    @Test
    void shouldSpeakByItsOddsAndNotLouderThanWhatWasTyped() {
        List<LearnedSequence> all = LearnedSequences.of(solves(9, 0.95, 0, 0)).all();
        HoldTrack track = HoldTrack.of(Sequence.parse(PLAIN), Orientation.IDENTITY);
        CubeState start = CubeState.SOLVED.apply(track.turns()).inverse();

        HoldEvidence evidence =
                LearnedSequences.of(solves(9, 0.95, 0, 0)).book().evidence(start, track.turns());
        HoldEvidence typed = SequenceBook.parse(PLAIN).evidence(start, track.turns());
        HoldEvidence certain = LearnedSequences.of(solves(1000, 1, 0, 0)).book().evidence(start, track.turns());

        double p = all.get(0).probability();
        assertThat(IntStream.range(0, 7)
                        .mapToDouble(turn -> evidence.ofHold(turn, Orientation.IDENTITY))
                        .sum())
                .isCloseTo(Math.log(p / (1 - p)), within(1e-9));
        assertThat(evidence.ofHold(3, Orientation.ofIndex(1))).isZero();
        assertThat(certain.ofHold(3, Orientation.IDENTITY)).isEqualTo(typed.ofHold(3, Orientation.IDENTITY));
    }

    /** What was read in solves begun in any hold, with other adjustments around it, is one sequence. */
    @ParameterizedTest
    @ValueSource(ints = {0, 5, 11, 18, 23})
    void shouldFindTheSameSequenceHoweverASolveWasHeldAndAdjusted(int begun) {
        String[] adjusted = {"U " + PLAIN, PLAIN + " U2", "U' " + PLAIN + " U"};
        List<List<SequenceReading>> solves = Stream.of(adjusted)
                .map(words -> HoldTrack.of(Sequence.parse(words), Orientation.ofIndex(begun)))
                .map(track -> SequenceReading.of(
                        CubeState.SOLVED.apply(track.turns()).inverse(),
                        track,
                        Collections.nCopies(track.size(), 0.97)))
                .toList();

        assertThat(LearnedSequences.of(solves).all())
                .singleElement()
                .satisfies(one -> assertThat(one.words()).isEqualTo(PLAIN));
    }

    /** The text that is kept reads back as what it was made of: all last layers of the public solves. */
    @Test
    void shouldReadItsWordsBackAsTheSameLayers() {
        int checked = 0;
        for (PublicSolves.Solve solve : PublicSolves.all()) {
            HoldExample example = solve.example();
            for (SequenceReading reading : SequenceReading.of(
                    example.start(),
                    example.track(),
                    Collections.nCopies(example.track().size(), 1.0))) {
                SequenceReading again = SequenceReading.of(reading.words(), 1);
                assertThat(again.layers()).as(reading.words()).isEqualTo(reading.layers());
                assertThat(again.key()).isEqualTo(reading.key());
                checked++;
            }
        }
        assertThat(checked).isGreaterThan(100);
    }

    /** A reading of a solve gives its own sequences, with the probability of the least sure turn. */
    @Test
    void shouldTakeTheLeastSureTurnOfAReading() {
        HoldTrack track = HoldTrack.of(Sequence.parse("U " + PLAIN + " U2"), Orientation.ofIndex(7));
        CubeState start = CubeState.SOLVED.apply(track.turns()).inverse();
        HoldReading read = new HoldInference(HoldModel.shipped())
                .infer(new HoldQuestion(track.turns(), start, Hand.LEFT, HoldEvidence.NONE));
        List<Double> sure = read.turns().stream()
                .map(HandTurn::probability)
                .map(p -> Math.min(1, p))
                .toList();

        List<SequenceReading> readings = SequenceReading.of(start, read.track(), sure);

        assertThat(readings).hasSize(1);
        assertThat(readings.get(0).probability())
                .isEqualTo(sure.subList(1, 8).stream()
                        .mapToDouble(Double::doubleValue)
                        .min()
                        .orElseThrow());
    }

    @Test
    void shouldRefuseWhatIsNoProbability() {
        assertThatThrownBy(() -> SequenceReading.of(PLAIN, 1.01))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("1.01");
    }
}
