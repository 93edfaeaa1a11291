package fermata.rehearsal.truth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.search.Slot;
import fermata.rehearsal.Evenings;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.SeenState;
import fermata.rehearsal.planning.CaseSequences;
import fermata.rehearsal.planning.PairPlanner;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The truth about stages, against what the centres alone show. */
class StageTruthTest {
    private static final List<String> NAMES =
            List.of("cross", "pair1", "pair2", "pair3", "pair4", "orient", "permute", "auf");

    static Stream<CuberStyle> characters() {
        return CuberStyle.characters().stream();
    }

    @ParameterizedTest
    @MethodSource("characters")
    void shouldHaveDoneWhatItsNameSaysWhenAStageEnds(CuberStyle style) {
        Evening evening = Evenings.usual(style);
        List<CubeState> states = Evenings.states(evening);
        for (AttemptTruth attempt : evening.attempts()) {
            List<StageTruth> stages = attempt.solve().stages();
            Orientation below = crossBelow(style, attempt.solve());
            int next = attempt.solve().turns().from();
            for (int place = 0; place < stages.size(); place++) {
                StageTruth stage = stages.get(place);
                assertThat(stage.name()).isEqualTo(NAMES.get(place));
                assertThat(stage.turns().from()).isEqualTo(next);
                next = stage.turns().to();
                CubeState seen = SeenState.in(below, states.get(next));
                assertThat(progress(seen))
                        .as("%s of attempt %d", stage, attempt.number())
                        .isGreaterThanOrEqualTo(place);
            }
            assertThat(next).isEqualTo(attempt.solve().turns().to());
            boolean isWhole = stages.size() == NAMES.size();
            assertThat(isWhole).isEqualTo(attempt.solve().solved());
        }
    }

    @Test
    void shouldNameThePairsByTheirCentresWhenTheyComeHome() {
        for (CuberStyle style : CuberStyle.characters()) {
            Evening evening = Evenings.usual(style);
            List<CubeState> states = Evenings.states(evening);
            for (SolveTruth solve : Evenings.solved(evening)) {
                for (StageTruth stage : solve.stages().subList(1, 5)) {
                    for (String name : stage.caseName().isEmpty()
                            ? new String[0]
                            : stage.caseName().split("\\+")) {
                        Edge edge = Edge.valueOf(name);
                        assertThat(states.get(stage.turns().to()).isSolved(edge))
                                .as("%s of the %s", stage, style.name())
                                .isTrue();
                    }
                }
            }
        }
    }

    @Test
    void shouldTakeTwoLooksWhenTheCharacterKnowsNoBetter() {
        Evening engineer = Evenings.usual(CuberStyle.engineer());
        Evening cook = Evenings.usual(CuberStyle.cook());
        assertThat(looks(engineer, "orient")).contains(2);
        assertThat(looks(engineer, "permute")).contains(2);
        assertThat(looks(cook, "orient")).isSubsetOf(0, 1);
        assertThat(looks(cook, "permute")).isSubsetOf(0, 1);
    }

    private static Set<Integer> looks(Evening evening, String name) {
        return Evenings.solved(evening).stream()
                .flatMap(solve -> solve.stages().stream())
                .filter(stage -> stage.name().equals(name))
                .map(StageTruth::looks)
                .collect(Collectors.toSet());
    }

    /** A hold with the face below on which the cross was solved; that the hand agrees is checked as well. */
    private static Orientation crossBelow(CuberStyle style, SolveTruth solve) {
        Orientation start = Orientation.ofLetters(solve.hold());
        assertThat(style.habits().crossFaces()).contains(start.coreAt(Face.D));
        return start;
    }

    /** How many stages are behind this state, seen with the cross below: -1 if not even the cross. */
    private static int progress(CubeState seen) {
        boolean isCross = Slot.CROSS.stream().allMatch(seen::isSolved);
        int pairs = PairPlanner.home(seen).size();
        if (!isCross) {
            return -1;
        }
        if (pairs < 4 || CaseSequences.pattern(seen) != 0) {
            return pairs;
        }
        if (seen.isSolved()) {
            return 7;
        }
        boolean isTurned = IntStream.range(1, 4)
                .anyMatch(quarters -> seen.then(CaseSequences.turned(quarters)).isSolved());
        return isTurned ? 6 : 5;
    }
}
