package fermata.rehearsal.truth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.Span;
import fermata.rehearsal.Evenings;
import fermata.rehearsal.character.CuberStyle;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** The ranges here are common practice among one-handed solvers; no published source gives them. */
class RhythmTruthTest {
    static Stream<Arguments> evenings() {
        return Stream.of(
                Arguments.of(CuberStyle.cook(), 15.0, 25.0, 50.0, 62.0),
                Arguments.of(CuberStyle.deckhand(), 22.0, 34.0, 50.0, 62.0),
                Arguments.of(CuberStyle.engineer(), 30.0, 45.0, 60.0, 78.0));
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldMakeUpEveryIntervalWhenMotorPartAndRestsAreAdded(CuberStyle style) {
        Evening evening = Evenings.usual(style);
        for (AttemptTruth attempt : evening.attempts()) {
            RhythmTruth rhythm = attempt.solve().rhythm();
            Span turns = attempt.solve().turns();
            assertThat(rhythm.motorMicros()).hasSize(turns.length() - 1);
            for (int turn = turns.from(); turn < turns.to() - 1; turn++) {
                long made = rhythm.motorMicros().get(turn - turns.from());
                for (RestTruth rest : rhythm.rests()) {
                    made += rest.afterTurn() == turn ? rest.lengthMicros() : 0;
                }
                long felt = evening.turns().get(turn + 1).atMicros()
                        - evening.turns().get(turn).atMicros();
                assertThat(made).as("interval after turn %d", turn).isEqualTo(felt);
            }
            assertThat(rhythm.rests())
                    .allMatch(rest -> rest.afterTurn() >= turns.from() && rest.afterTurn() < turns.to() - 1);
        }
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldLieInTheCustomaryRangesWhenAveraged(
            CuberStyle style, double leastSeconds, double mostSeconds, double fewestTurns, double mostTurns) {
        Evening evening = Evenings.usual(style);
        List<SolveTruth> solves = Evenings.solved(evening);
        double seconds = solves.stream()
                .mapToDouble(solve -> Evenings.seconds(evening, solve))
                .average()
                .orElseThrow();
        double turns = solves.stream().mapToLong(Evenings::turnCount).average().orElseThrow();
        assertThat(seconds).isBetween(leastSeconds, mostSeconds);
        assertThat(turns).isBetween(fewestTurns, mostTurns);
        assertThat(solves.stream().mapToDouble(solve -> Evenings.seconds(evening, solve)))
                .allMatch(each -> each > 8 && each < 75);
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldRestForTheRightReasonsWhenStagesBegin(CuberStyle style) {
        Evening evening = Evenings.usual(style);
        int gaps = 0;
        int chances = 0;
        for (SolveTruth solve : Evenings.solved(evening)) {
            for (StageTruth stage : solve.stages()) {
                long before = restsOf(solve, stage, RestCause.LOOK_AHEAD);
                if (stage.name().startsWith("pair")
                        && stage.looks() > 0
                        && stage.turns().from() > solve.turns().from()) {
                    chances++;
                    gaps += (int) before;
                } else {
                    assertThat(before).isZero();
                }
                boolean isRecognised =
                        stage.name().equals("orient") || stage.name().equals("permute");
                if (isRecognised) {
                    assertThat(countWithin(solve, stage, RestCause.RECOGNITION)).isEqualTo(stage.looks());
                }
            }
            assertThat(countOf(solve, RestCause.REGRIP))
                    .isEqualTo(solve.rhythm().regrips().size());
        }
        // Binomial: five standard deviations about the style's own probability.
        double expected = style.pauses().lookAheadProbability();
        assertThat((double) gaps / chances)
                .isBetween(
                        expected - 5 * Math.sqrt(expected * (1 - expected) / chances),
                        expected + 5 * Math.sqrt(expected * (1 - expected) / chances));
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldTakeEverySlipBackWhenItIsNoticed(CuberStyle style) {
        Evening evening = Evenings.usual(style);
        long slips = 0;
        for (SolveTruth solve : Evenings.solved(evening)) {
            long moves = solve.moves().stream().filter(MoveTruth::slip).count();
            assertThat(moves).isEqualTo(2 * countOf(solve, RestCause.SLIP));
            slips += moves / 2;
        }
        assertThat(slips).isPositive();
    }

    private static long restsOf(SolveTruth solve, StageTruth stage, RestCause cause) {
        return stage.looks() == 0
                ? 0
                : solve.rhythm().rests().stream()
                        .filter(rest -> rest.cause() == cause
                                && rest.afterTurn() == stage.turns().from() - 1)
                        .count();
    }

    private static long countWithin(SolveTruth solve, StageTruth stage, RestCause cause) {
        return solve.rhythm().rests().stream()
                .filter(rest -> rest.cause() == cause)
                .filter(rest -> rest.afterTurn() >= stage.turns().from() - 1
                        && rest.afterTurn() < stage.turns().to() - 1)
                .count();
    }

    private static long countOf(SolveTruth solve, RestCause cause) {
        return solve.rhythm().rests().stream()
                .filter(rest -> rest.cause() == cause)
                .count();
    }
}
