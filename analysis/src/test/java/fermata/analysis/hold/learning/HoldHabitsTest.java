package fermata.analysis.hold.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.GuessedExample;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.HoldReading;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Mirror;
import fermata.decoder.orientation.Orientation;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A made-up solver who always tilts first: what the model of everybody does not expect, and corrections say. */
class HoldHabitsTest {
    private static final List<HoldExample> TILTING = List.of(
            example("z U R U' z' R U R'", "a"),
            example("z U' R U z' R U' R'", "b"),
            example("z U R' U' R z' R U2 R'", "c"),
            example("z U' R' U z' R U R'", "d"));

    private static HoldExample example(String words, String group) {
        Sequence sequence = Sequence.parse(words);
        HoldTrack track = HoldTrack.of(sequence, Orientation.IDENTITY);
        CubeState start = CubeState.SOLVED.apply(track.turns()).inverse();
        return new HoldExample(start, track, Hand.LEFT, group);
    }

    private static double truthOf(HoldInference inference, HoldExample example) {
        HoldReading reading = inference.infer(
                new HoldQuestion(example.track().turns(), example.start(), example.hand(), HoldEvidence.NONE));
        double sum = 0;
        for (int turn = 0; turn < example.track().size(); turn++) {
            sum += reading.odds().at(turn, example.track().layer(turn));
        }
        return sum / example.track().size();
    }

    @Test
    void shouldReadASolveLikelierAsTheSolverWouldOnceOthersWereCorrected() {
        HoldInference everybody = new HoldInference(HoldModel.shipped());
        HoldExample unseen = example("z U2 R U2 z' R U' R'", "e");
        HoldHabits habits = HoldHabits.learn(HoldModel.shipped(), TILTING);

        assertThat(habits.solves()).isEqualTo(4);
        assertThat(truthOf(everybody.with(habits::join), unseen)).isGreaterThan(truthOf(everybody, unseen) + 0.1);
    }

    /** Turns come every 200 ms, and the cube is turned in no time at all: only of this solver a short beat tells it. */
    private static HoldExample timed(HoldExample example) {
        List<Long> micros = IntStream.range(0, example.track().size())
                .mapToObj(turn ->
                        turn > 0 && example.track().rotationBefore(turn) != Orientation.IDENTITY ? 100_000L : 200_000L)
                .toList();
        return new HoldExample(example.start(), example.track(), example.hand(), example.group(), micros);
    }

    private static double oddsOfRotation(HoldExample heard, HoldHabits habits) {
        HoldReading reading = new HoldInference(HoldModel.shipped())
                .with(habits::join)
                .infer(new HoldQuestion(heard.track().turns(), heard.start(), heard.hand(), heard.evidence()));
        double rotated = reading.rotated().get(3);
        return rotated / (1 - rotated);
    }

    @Test
    void shouldHearARotationAsCorrectedSolvesTimeIt() {
        HoldExample unseen = example("z U2 R U2 z' R U' R'", "e");
        HoldExample even = new HoldExample(
                unseen.start(),
                unseen.track(),
                unseen.hand(),
                "e",
                Collections.nCopies(unseen.track().size(), 200_000L));
        HoldHabits untimed = HoldHabits.learn(HoldModel.shipped(), TILTING);
        HoldHabits timed = HoldHabits.learn(
                HoldModel.shipped(), TILTING.stream().map(HoldHabitsTest::timed).toList());

        assertThat(untimed.hearTimes()).isFalse();
        assertThat(timed.hearTimes()).isTrue();
        assertThat(oddsOfRotation(timed(unseen), untimed)).isLessThan(oddsOfRotation(even, untimed));
        assertThat(oddsOfRotation(timed(unseen), timed)).isGreaterThan(oddsOfRotation(even, timed));
    }

    private static GuessedExample guessed(HoldExample read, boolean sure) {
        return new GuessedExample(read, Collections.nCopies(read.track().size(), sure));
    }

    @Test
    void shouldLearnFromReadingsBesideCorrectionsOnlyWhereTheyAreSure() {
        HoldModel shipped = HoldModel.shipped();
        HoldInference everybody = new HoldInference(shipped);
        HoldExample unseen = example("z U2 R U2 z' R U' R'", "e");
        List<HoldExample> corrected = TILTING.subList(0, 1);
        double before = truthOf(everybody.with(HoldHabits.learn(shipped, corrected)::join), unseen);
        List<GuessedExample> sure =
                TILTING.stream().skip(1).map(read -> guessed(read, true)).toList();
        List<GuessedExample> unsure =
                TILTING.stream().skip(1).map(read -> guessed(read, false)).toList();

        assertThat(truthOf(everybody.with(HoldHabits.learn(shipped, corrected, sure)::join), unseen))
                .isGreaterThan(before + 0.02);
        assertThat(truthOf(everybody.with(HoldHabits.learn(shipped, corrected, unsure)::join), unseen))
                .isLessThan(before + 0.02);
        assertThat(HoldHabits.learn(shipped, List.of(), sure).isNone()).isTrue();
    }

    @Test
    void shouldRefuseAGuessThatDoesNotSayOfEveryTurnWhetherItIsSure() {
        assertThatThrownBy(() -> new GuessedExample(TILTING.get(0), List.of(true)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("a guess of 6 turns says of 1");
    }

    @Test
    void shouldLearnTheSameOfARightHandInTheMirror() {
        List<HoldExample> right = TILTING.stream()
                .map(one -> new HoldExample(Mirror.of(one.start()), one.track().mirrored(), Hand.RIGHT, one.group()))
                .toList();
        HoldModel shipped = HoldModel.shipped();

        assertThat(HoldHabits.learn(shipped, right).join(shipped).weights().print())
                .isEqualTo(HoldHabits.learn(shipped, TILTING)
                        .join(shipped)
                        .weights()
                        .print());
    }

    @Test
    void shouldReadLikeEverybodyWhenNothingWasCorrected() {
        HoldInference everybody = new HoldInference(HoldModel.shipped());

        assertThat(HoldHabits.learn(HoldModel.shipped(), List.of()).isNone()).isTrue();
        assertThat(everybody.with(HoldHabits.NONE::join)).isSameAs(everybody);
    }
}
