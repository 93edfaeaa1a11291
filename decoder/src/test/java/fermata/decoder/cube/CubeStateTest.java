package fermata.decoder.cube;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.ReferenceTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CubeStateTest {
    /** Source: `scramble_checks.csv`, facelets computed with GAP 4.12.1 from the facelet permutations. */
    static Stream<List<String>> scrambles() {
        return ReferenceTable.rows("scramble_checks.csv");
    }

    @ParameterizedTest
    @MethodSource("scrambles")
    void shouldShowTheStickersThatGapComputesWhenAScrambleIsApplied(List<String> row) {
        CubeState state = CubeState.SOLVED.apply(turns(row.get(0)));

        assertThat(state.facelets()).isEqualTo(row.get(1));
        assertThat(Facelets.read(row.get(1))).isEqualTo(state);
        assertThat(state.legality()).isEqualTo(Legality.LEGAL);
    }

    @ParameterizedTest
    @MethodSource("scrambles")
    void shouldCountTheBadEdgesThatTheTableGivesForTheFrontAxis(List<String> row) {
        CubeState state = CubeState.SOLVED.apply(turns(row.get(0)));

        int flipped = 0;
        for (Edge place : Edge.values()) {
            flipped += state.flipAt(place);
        }
        assertThat(flipped).isEqualTo(Integer.parseInt(row.get(15)));
    }

    @Test
    void shouldMultiplyLikeTurningWhenStatesAreComposed() {
        Random random = new Random(20261125);
        for (int round = 0; round < 500; round++) {
            List<Turn> first = randomTurns(random, 1 + random.nextInt(30));
            List<Turn> second = randomTurns(random, 1 + random.nextInt(30));
            CubeState before = CubeState.SOLVED.apply(first);

            CubeState product = before.then(CubeState.SOLVED.apply(second));

            assertThat(product).as("%s then %s", first, second).isEqualTo(before.apply(second));
            assertThat(product.relativeTo(before)).isEqualTo(CubeState.SOLVED.apply(second));
            assertThat(product.then(product.inverse())).isEqualTo(CubeState.SOLVED);
            assertThat(product.inverse().then(product)).isEqualTo(CubeState.SOLVED);
        }
    }

    @Test
    void shouldFindEachCubieWhereItIs() {
        CubeState state = CubeState.SOLVED.apply(randomTurns(new Random(3), 40));

        for (Corner corner : Corner.values()) {
            assertThat(state.cornerAt(state.placeOf(corner))).isEqualTo(corner);
        }
        for (Edge edge : Edge.values()) {
            assertThat(state.edgeAt(state.placeOf(edge))).isEqualTo(edge);
        }
    }

    @Test
    void shouldNameTheReasonWhenAStateCannotBeReachedByTurning() {
        int[] corners = {0, 1, 2, 3, 4, 5, 6, 7};
        int[] edges = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11};
        int[] swapped = {1, 0, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11};
        int[] twisted = {1, 0, 0, 0, 0, 0, 0, 0};
        int[] flipped = {0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0};

        assertThat(CubeState.ofCubies(corners, twisted, edges, new int[12]).legality())
                .isEqualTo(Legality.TWISTED_CORNER);
        assertThat(CubeState.ofCubies(corners, new int[8], edges, flipped).legality())
                .isEqualTo(Legality.FLIPPED_EDGE);
        assertThat(CubeState.ofCubies(corners, new int[8], swapped, new int[12]).legality())
                .isEqualTo(Legality.SWAPPED_PAIR);
        assertThat(Legality.SWAPPED_PAIR.reason()).contains("two pieces were swapped");
    }

    @Test
    void shouldRefuseCubiesThatAreMissingDoubledOrOutOfRange() {
        int[] doubled = {0, 0, 2, 3, 4, 5, 6, 7};
        int[] edges = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11};

        assertThatThrownBy(() -> CubeState.ofCubies(doubled, new int[8], edges, new int[12]))
                .hasMessage("corner 0 at place 1 stands in another place as well");
        assertThatThrownBy(() -> CubeState.ofCubies(new int[] {0}, new int[8], edges, new int[12]))
                .hasMessage("1 values of corner where 8 belong");
        assertThatThrownBy(() -> CubeState.ofCubies(
                        new int[] {0, 1, 2, 3, 4, 5, 6, 7}, new int[] {0, 3, 0, 0, 0, 0, 0, 0}, edges, new int[12]))
                .hasMessage("twist 3 at place 1 is not in 0..2");
    }

    @Test
    void shouldNameTheLetterWhenAFaceletStringIsNotACube() {
        String solved = CubeState.SOLVED.facelets();

        assertThatThrownBy(() -> Facelets.read("UU")).hasMessage("a facelet string has 54 letters, this one 2");
        assertThatThrownBy(() -> Facelets.read("X" + solved.substring(1)))
                .hasMessage("letter 1: face 'X' is none of U R F D L B");
        assertThatThrownBy(() -> Facelets.read(solved.substring(0, 4) + "D" + solved.substring(5)))
                .hasMessage("letter 5 is the centre of U but reads D");
        assertThatThrownBy(() -> Facelets.read(solved.substring(0, 8) + "D" + solved.substring(9)))
                .hasMessage("no corner shows [D, R, F], as read at URF");
    }

    private static List<Turn> turns(String words) {
        return words.equals("(empty)")
                ? List.of()
                : Stream.of(words.split(" ")).map(Turn::parse).toList();
    }

    private static List<Turn> randomTurns(Random random, int count) {
        List<Turn> turns = new ArrayList<>();
        for (int turn = 0; turn < count; turn++) {
            turns.add(Turn.ofIndex(random.nextInt(18)));
        }
        return turns;
    }

    @Test
    void shouldNameThePiecesThatAreHomeWhenSomeAreNot() {
        SplittableRandom random = new SplittableRandom(8);
        for (int run = 0; run < 200; run++) {
            CubeState state = CubeState.SOLVED;
            for (int turns = random.nextInt(8); turns > 0; turns--) {
                state = state.apply(Turn.ofIndex(random.nextInt(18)));
            }
            int home = 0;
            for (Corner place : Corner.values()) {
                home |= state.isSolved(place) ? 1 << place.ordinal() : 0;
            }
            for (Edge place : Edge.values()) {
                home |= state.isSolved(place) ? 1 << 8 + place.ordinal() : 0;
            }
            assertThat(state.home()).isEqualTo(home);
            for (Turn turn : Turn.all()) {
                assertThat(state.homeAfter(turn)).isEqualTo(state.apply(turn).home());
            }
        }
    }
}
