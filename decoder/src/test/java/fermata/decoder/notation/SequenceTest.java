package fermata.decoder.notation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import fermata.decoder.ReferenceTable;
import fermata.decoder.cube.CubeState;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class SequenceTest {
    /** Source: `sequence_orders.csv`, 103 words computed with GAP 4.12.1 as permutations of all 54 stickers. */
    static Stream<List<String>> words() {
        return ReferenceTable.rows("sequence_orders.csv");
    }

    /** Source: `mixed_notation_checks.csv`, 40 words with wides, slices and rotations, computed with GAP 4.12.1. */
    static Stream<List<String>> mixedWords() {
        return ReferenceTable.rows("mixed_notation_checks.csv");
    }

    @ParameterizedTest
    @MethodSource("words")
    void shouldHaveGapsOrderAndStickersWhenAWordIsApplied(List<String> row) {
        Sequence word = Sequence.parse(row.get(0));

        assertThat(orderOf(word)).isEqualTo(Integer.parseInt(row.get(1)));
        assertThat(seenAfter(word)).isEqualTo(row.get(5));
    }

    @ParameterizedTest
    @MethodSource("mixedWords")
    void shouldHaveGapsOrderAndStickersWhenNotationIsMixed(List<String> row) {
        Sequence word = Sequence.parse(row.get(0));
        Sequence restoring = Sequence.parse(row.get(3).equals("(none)") ? "" : row.get(3));

        assertThat(seenAfter(word)).isEqualTo(row.get(1));
        assertThat(orderOf(word)).isEqualTo(Integer.parseInt(row.get(2)));
        assertThat(seenAfter(word.then(restoring))).isEqualTo(row.get(4));
        assertThat(Sequence.parse(word.toString())).isEqualTo(word);
        assertThat(seenAfter(word.then(word.inverse()))).isEqualTo(CubeState.SOLVED.facelets());
    }

    /** Sources: WCA Regulations 12a (2024-01-01) for faces, wides, rotations; slices and the rest common practice. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "R2' U2'         | R2 U2",
                "R'2             | R2",
                "R3              | R'",
                "r Rw 2Rw        | r r r",
                "R\u2019 U\u2032 | R' U'",
                "(R U R' U')2    | R U R' U' R U R' U'",
                "(R U)'          | U' R'",
                "[R: U]          | R U R'",
                "[R, U]          | R U R' U'",
                "[R, U]'         | U R U' R'",
                "[x: [R U: D]]   | x R U D U' R' x'",
                "RUR'U'          | R U R' U'",
                "R // then U F    | R",
            })
    void shouldReadTheTradesWaysOfWriting(String written, String plain) {
        assertThat(Sequence.parse(written)).hasToString(plain);
    }

    @Test
    void shouldGoOnReadingAfterACommentsLine() {
        assertThat(Sequence.parse("R // the first pair\nU'")).hasToString("R U'");
    }

    /** Source: the word identities M = R L' x', Rw = L x, d = U y' and so on, all true in GAP 4.12.1. */
    @ParameterizedTest
    @CsvSource(
            quoteCharacter = '"',
            value = {
                "M, R L' x'",
                "M', R' L x",
                "E, U D' y'",
                "S, F' B z",
                "r, L x",
                "l, R x'",
                "u, D y",
                "d, U y'",
                "f, B z",
                "b, F z'",
                "x, R M' L'",
                "y, U E' D'",
                "z, F S B'",
                "x y x', z",
                "x y, z x",
                "y2 x2, z2",
                "x U x', F",
                "z U z', L"
            })
    void shouldAgreeWithTheWordIdentities(String left, String right) {
        assertThat(seenAfter(Sequence.parse(left))).isEqualTo(seenAfter(Sequence.parse(right)));
    }

    @Test
    void shouldTellWhatTheCentresFeelAndTheHoldBeforeEachTurn() {
        CoreWalk walk = Sequence.parse("r U M z U").walk(Orientation.IDENTITY);

        assertThat(walk.turns()).extracting(Object::toString).containsExactly("L", "F", "R", "L'", "L");
        assertThat(walk.steps())
                .extracting(step -> step.hold().letters())
                .containsExactly("UF", "FD", "FD", "FD", "LF");
        assertThat(walk.steps()).extracting(CoreStep::move).containsExactly(0, 1, 2, 2, 4);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '"',
            value = {
                "R U Q' F   | 5 | Q'    | is no move",
                "R U4       | 3 | U4    | the amount is not",
                "3Rw        | 1 | 3Rw   | layer counts",
                "2R         | 1 | 2R    | layer counts",
                "Mw         | 1 | Mw    | made wide",
                "R ' '      | 3 | '     | is no move",
                "(R U       | 1 | (R U  | is not closed by )",
                "R U)       | 4 | )     | closes nothing",
                "[R U]      | 1 | [R U  | two parts",
                "[R: U      | 1 | [R: U | is not closed by ]",
                "(R)0       | 4 | 0     | 1 to 999 times",
            })
    void shouldNameColumnAndTokenWhenTextIsNoSequence(String text, int column, String token, String problem) {
        assertThatExceptionOfType(NotationException.class)
                .isThrownBy(() -> Sequence.parse(text))
                .satisfies(error -> {
                    assertThat(error.column()).isEqualTo(column);
                    assertThat(error.token()).isEqualTo(token);
                })
                .withMessageContaining(problem);
    }

    @Test
    void shouldRefuseToGrowWithoutBound() {
        assertThatExceptionOfType(NotationException.class)
                .isThrownBy(() -> Sequence.parse("(((R U)999)999)999"))
                .withMessageContaining("grows beyond 10000");
        assertThatExceptionOfType(NotationException.class)
                .isThrownBy(() -> Sequence.parse("(".repeat(5000)))
                .withMessageContaining("deeper than 32");
    }

    private static String seenAfter(Sequence word) {
        return word.walk(Orientation.IDENTITY).end().facelets(word.state());
    }

    private static int orderOf(Sequence word) {
        CubeState state = CubeState.SOLVED;
        Orientation hold = Orientation.IDENTITY;
        int order = 0;
        do {
            CoreWalk walk = word.walk(hold);
            state = state.apply(walk.turns());
            hold = walk.end();
            order++;
        } while (!state.isSolved() || hold != Orientation.IDENTITY);
        return order;
    }
}
