package fermata.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.CoreStep;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.LeftSide;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.CuberHand;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.MoveTruth;
import fermata.rehearsal.truth.OtherTruth;
import fermata.rehearsal.truth.ScrambleTruth;
import fermata.rehearsal.truth.SolveTruth;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class VirtualCuberTest {
    private static final int SOLVES = Evenings.SOLVES;

    static Stream<CuberStyle> styles() {
        return CuberStyle.characters().stream();
    }

    static Stream<Evening> evenings() {
        return CuberStyle.characters().stream().map(Evenings::usual);
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldEndSolvedUnlessAbandonedWhenSeeded(Evening evening) {
        List<CubeState> states = Evenings.states(evening);
        assertThat(Evenings.solved(evening)).hasSize(SOLVES);
        for (AttemptTruth attempt : evening.attempts()) {
            SolveTruth solve = attempt.solve();
            assertThat(states.get(solve.turns().to()).isSolved())
                    .as("attempt %d of the %s", attempt.number(), evening.cuber())
                    .isEqualTo(solve.solved());
        }
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldFeelWhatTheHandDidWhenItsMovesAreWalked(Evening evening) {
        for (AttemptTruth attempt : evening.attempts()) {
            SolveTruth solve = attempt.solve();
            List<CoreStep> steps =
                    solve.sequence().walk(Orientation.ofLetters(solve.hold())).steps();
            int next = solve.turns().from();
            int step = 0;
            for (MoveTruth move : solve.moves()) {
                assertThat(move.turns().from()).isEqualTo(next);
                next = move.turns().to();
                if (!move.isRotation()) {
                    assertThat(CubeState.SOLVED.apply(Evenings.turns(evening, move.turns())))
                            .as("move %s of attempt %d", move, attempt.number())
                            .isEqualTo(CubeState.of(steps.get(step++).turn()));
                }
            }
            assertThat(next).isEqualTo(solve.turns().to());
            assertThat(step).isEqualTo(steps.size());
        }
    }

    @ParameterizedTest
    @MethodSource("styles")
    void shouldTurnTheHeldSideAsTheHabitHasItWhenTheCrossIsDone(CuberStyle style) {
        String held = style.hand() == CuberHand.LEFT ? "L" : "R";
        Map<String, Integer> made = new HashMap<>();
        for (AttemptTruth attempt : Evenings.usual(style).attempts()) {
            int crossEnd = attempt.solve().stages().get(0).turns().to();
            for (MoveTruth move : attempt.solve().moves()) {
                String letter = move.move().substring(0, 1);
                assertThat(letter).isNotIn("M", "E", "S");
                // What is turned round right after the cross may belong to it.
                if (move.turns().from() > crossEnd) {
                    assertThat(letter).isNotIn("B", "b");
                    made.merge(letter, 1, Integer::sum);
                }
            }
        }
        LeftSide left = style.habits().handling().left();
        assertThat(made.containsKey(held)).isEqualTo(left == LeftSide.IN_PLACE);
        assertThat(made.containsKey("z")).isEqualTo(left == LeftSide.TILTED);
        assertThat(made).containsKeys("U", "y");
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldReachTheScrambleWhenItIsTurnedAsMeantFromSolved(Evening evening) {
        List<CubeState> states = Evenings.states(evening);
        int compared = 0;
        for (AttemptTruth attempt : evening.attempts()) {
            ScrambleTruth scramble = attempt.scramble();
            assertThat(states.get(scramble.turns().from()).isSolved()).isEqualTo(scramble.fromSolved());
            List<Turn> meant = Sequence.parse(scramble.words())
                    .walk(Orientation.ofLetters(scramble.hold()))
                    .turns();
            CubeState reached = states.get(scramble.turns().from()).apply(meant);
            assertThat(states.get(scramble.turns().to())).isEqualTo(reached);
            assertThat(attempt.solve().turns().from())
                    .isEqualTo(scramble.turns().to());
            boolean asMeant = scramble.fromSolved() && scramble.hold().equals("UF");
            if (asMeant) {
                assertThat(reached).isEqualTo(Sequence.parse(scramble.words()).state());
                compared++;
            }
        }
        assertThat(compared)
                .isGreaterThan(SOLVES / 2)
                .isLessThan(evening.attempts().size());
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldReportQuarterTurnsOnlyWhenHabitsDoNotSayOtherwise(Evening evening) {
        assertThat(evening.turns()).isNotEmpty().allMatch(turn -> turn.turn().quarters() != 2);
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldTurnIdlyWithoutChangingTheCubeWhenFidgeting(Evening evening) {
        assertThat(evening.others()).isNotEmpty();
        for (OtherTruth other : evening.others()) {
            assertThat(CubeState.SOLVED
                            .apply(Evenings.turns(evening, other.turns()))
                            .isSolved())
                    .as(other.words())
                    .isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("evenings")
    void shouldGiveEveryTurnToOneAttemptOrNoneWhenTheEveningIsCutUp(Evening evening) {
        List<Span> spans = new ArrayList<>();
        evening.attempts().forEach(attempt -> {
            spans.add(attempt.scramble().turns());
            spans.add(attempt.solve().turns());
        });
        evening.others().forEach(other -> spans.add(other.turns()));
        spans.sort((one, other) -> Integer.compare(one.from(), other.from()));
        int next = 0;
        for (Span span : spans) {
            assertThat(span.from()).isEqualTo(next);
            next = span.to();
        }
        assertThat(next).isEqualTo(evening.turns().size());
    }

    @Test
    void shouldReportHalfTurnsWholeWhenHabitsSaySo() {
        CuberStyle cook = CuberStyle.cook();
        CuberStyle whole = cook.with(cook.habits().withHalfTurnsWhole(true));
        Evening evening = Evenings.of(whole, 5, EveningPlan.plain(3));
        assertThat(evening.turns()).anyMatch(turn -> turn.turn().quarters() == 2);
        for (MoveTruth move : Evenings.solved(evening).get(0).moves()) {
            assertThat(move.turns().length()).isEqualTo(move.isRotation() ? 0 : 1);
        }
    }

    @Test
    void shouldRepeatTheEveningWhenTheSeedIsTheSame() {
        EveningPlan plan = EveningPlan.ofSolves(5);
        Evening evening = Evenings.of(CuberStyle.deckhand(), 9, plan);
        assertThat(Evenings.of(CuberStyle.deckhand(), 9, plan)).isEqualTo(evening);
        assertThat(Evenings.of(CuberStyle.deckhand(), 10, plan)).isNotEqualTo(evening);
    }

    @Test
    void shouldBeEmptyWhenNoSolveIsPlanned() {
        assertThat(Evenings.of(CuberStyle.cook(), 1, EveningPlan.ofSolves(0)).turns())
                .isEmpty();
    }
}
