package fermata.analysis.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every shipped sequence against the case it is for: reference tables oll_cases.csv (U-colour patterns) and
 * pll_cases.csv (permutations), computed with GAP 4.12.1. The case numbers and letters in them are from memory, the
 * cases are not.
 */
class LastLayerSequencesTest {
    private static final int PATTERN_COLUMN = 11;

    static Stream<LastLayerSequences.Known> all() {
        return Stream.concat(LastLayerSequences.orientations().stream(), LastLayerSequences.permutations().stream());
    }

    @Test
    void shouldSolveTheCaseOfItsNumberWhenOrienting() throws IOException {
        List<List<String>> rows = rows("oll_cases.csv");
        assertThat(rows).hasSize(57);
        for (int place = 0; place < 57; place++) {
            LastLayerSequences.Known known = LastLayerSequences.orientations().get(place);
            assertThat(known.name()).isEqualTo(rows.get(place).get(0));
            CubeState met = known.sequence().state().inverse();
            String listed = rows.get(place).get(PATTERN_COLUMN);
            assertThat(Stream.of(0, 1, 2, 3).map(quarters -> uColourStickers(met, quarters)))
                    .as("orientation %s by %s", known.name(), known.sequence())
                    .contains(listed);
        }
    }

    @Test
    void shouldSolveTheCaseOfItsLetterWhenPermuting() throws IOException {
        List<List<String>> rows = rows("pll_cases.csv");
        assertThat(rows).hasSize(21);
        for (int place = 0; place < 21; place++) {
            LastLayerSequences.Known known = LastLayerSequences.permutations().get(place);
            assertThat(known.name()).isEqualTo(rows.get(place).get(0));
            CubeState listed = Sequence.parse(rows.get(place).get(1)).state();
            CubeState ours = known.sequence().state();
            assertThat(LastLayerCases.pattern(ours)).isZero();
            assertThat(turnedEitherSide(listed))
                    .as("permutation %s by %s", known.name(), known.sequence())
                    .contains(ours);
        }
    }

    @ParameterizedTest
    @MethodSource("all")
    void shouldStayInReachOfALeftHandWhenTurned(LastLayerSequences.Known known) {
        List<Move> moves = known.sequence().moves();
        assertThat(known.sequence().walk(Orientation.IDENTITY).end()).isEqualTo(Orientation.IDENTITY);
        assertThat(PairPlanner.home(known.sequence().state())).hasSize(4);
        assertThat(moves).hasSizeLessThanOrEqualTo(18);
        for (int place = 0; place < moves.size(); place++) {
            assertThat(moves.get(place).letter()).isIn("R", "U", "F", "D", "r");
            if (place > 0) {
                assertThat(moves.get(place).letter())
                        .isNotEqualToIgnoringCase(moves.get(place - 1).letter());
            }
        }
    }

    @Test
    void shouldMeetEveryLastLayerWhenEitherHabitPlans() {
        for (boolean twoLooks : new boolean[] {false, true}) {
            LastLayerPlanner planner = new LastLayerPlanner(twoLooks, state -> state);
            for (LastLayerSequences.Known orientation : LastLayerSequences.orientations()) {
                for (LastLayerSequences.Known permutation : LastLayerSequences.permutations()) {
                    CubeState met = permutation
                            .sequence()
                            .state()
                            .inverse()
                            .then(orientation.sequence().state().inverse());
                    CubeState end = met;
                    for (PlannedStage stage : planner.plan(met)) {
                        for (List<Move> look : stage.looks()) {
                            end = end.then(new Sequence(look).state());
                        }
                    }
                    assertThat(end.isSolved())
                            .as("orientation %s over permutation %s", orientation.name(), permutation.name())
                            .isTrue();
                }
            }
        }
    }

    /** Where the U colour shows around the last layer, by the reference's sticker numbers, without the centre. */
    private static String uColourStickers(CubeState met, int quarters) {
        String letters = met.then(LastLayerCases.turned(quarters)).facelets();
        List<String> places = new ArrayList<>();
        for (int sticker = 1; sticker <= 54; sticker++) {
            if (letters.charAt(sticker - 1) == 'U' && sticker != 5) {
                places.add(Integer.toString(sticker));
            }
        }
        return String.join(" ", places);
    }

    private static List<CubeState> turnedEitherSide(CubeState state) {
        List<CubeState> turned = new ArrayList<>();
        for (int before = 0; before < 4; before++) {
            for (int after = 0; after < 4; after++) {
                turned.add(LastLayerCases.turned(before).then(state).then(LastLayerCases.turned(after)));
            }
        }
        return turned;
    }

    private static List<List<String>> rows(String file) throws IOException {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                LastLayerSequencesTest.class.getResourceAsStream("/fermata/fixtures/reference/" + file),
                StandardCharsets.UTF_8))) {
            return lines.lines().skip(1).map(line -> List.of(line.split(","))).toList();
        }
    }
}
