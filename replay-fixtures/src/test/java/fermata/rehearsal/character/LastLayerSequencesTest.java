package fermata.rehearsal.character;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.planning.CaseSequences;
import fermata.rehearsal.planning.LastLayerPlanner;
import fermata.rehearsal.planning.PairPlanner;
import fermata.rehearsal.planning.PlannedStage;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every shipped sequence against the case it is for: reference tables oll_cases.csv (U-colour patterns) and
 * pll_cases.csv (permutations), computed with GAP 4.12.1. The case numbers and letters in them are from memory, the
 * cases are not.
 */
class LastLayerSequencesTest {
    private static final int PATTERN_COLUMN = 11;

    /** Every case that has a way of its own beside the customary one. */
    private static final Set<String> OWN =
            Set.of(("1 2 3 4 9 10 12 13 15 16 17 18 19 20 21 23 25 28 29 30 38 39 41 42 47 49 50 54 56 57"
                            + " Aa Ab E F Ga Gb Gc Gd H Ja Jb Na Nb Ra Rb Ub V Y")
                    .split(" "));

    static Stream<LastLayerSequences.Known> all() {
        return ways().flatMap(own -> Stream.concat(
                LastLayerSequences.orientations(own).stream(), LastLayerSequences.permutations(own).stream()));
    }

    static Stream<Set<String>> ways() {
        return Stream.of(Set.of(), OWN);
    }

    @ParameterizedTest
    @MethodSource("ways")
    void shouldSolveTheCaseOfItsNumberWhenOrienting(Set<String> own) throws IOException {
        List<List<String>> rows = rows("oll_cases.csv");
        assertThat(rows).hasSize(57);
        for (int place = 0; place < 57; place++) {
            LastLayerSequences.Known known =
                    LastLayerSequences.orientations(own).get(place);
            assertThat(known.name()).isEqualTo(rows.get(place).get(0));
            CubeState met = known.sequence().state().inverse();
            String listed = rows.get(place).get(PATTERN_COLUMN);
            assertThat(Stream.of(0, 1, 2, 3).map(quarters -> uColourStickers(met, quarters)))
                    .as("orientation %s by %s", known.name(), known.sequence())
                    .contains(listed);
        }
    }

    @ParameterizedTest
    @MethodSource("ways")
    void shouldSolveTheCaseOfItsLetterWhenPermuting(Set<String> own) throws IOException {
        List<List<String>> rows = rows("pll_cases.csv");
        assertThat(rows).hasSize(21);
        for (int place = 0; place < 21; place++) {
            LastLayerSequences.Known known =
                    LastLayerSequences.permutations(own).get(place);
            assertThat(known.name()).isEqualTo(rows.get(place).get(0));
            CubeState listed = Sequence.parse(rows.get(place).get(1)).state();
            CubeState ours = known.sequence().state();
            assertThat(CaseSequences.pattern(ours)).isZero();
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
        assertThat(moves).hasSizeLessThanOrEqualTo(21);
        for (int place = 0; place < moves.size(); place++) {
            assertThat(moves.get(place).letter()).isIn("R", "U", "F", "D", "r", "f", "x", "y");
            if (place > 0) {
                assertThat(moves.get(place).letter())
                        .isNotEqualTo(moves.get(place - 1).letter());
            }
        }
    }

    @ParameterizedTest
    @MethodSource("ways")
    void shouldMeetEveryLastLayerWhenEitherHabitPlans(Set<String> own) {
        for (boolean twoLooks : new boolean[] {false, true}) {
            Handling handling = new Handling(LeftSide.TILTED, false, true, 0.5, own);
            LastLayerPlanner planner = new LastLayerPlanner(
                    new CuberHabits(List.of(Face.U), 1, twoLooks, false, 0, handling), state -> state);
            for (LastLayerSequences.Known orientation : LastLayerSequences.orientations(own)) {
                for (LastLayerSequences.Known permutation : LastLayerSequences.permutations(own)) {
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
        String letters = met.then(CaseSequences.turned(quarters)).facelets();
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
                turned.add(CaseSequences.turned(before).then(state).then(CaseSequences.turned(after)));
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
