package fermata.analysis.cases;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import fermata.decoder.search.Slot;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Against {@code oll_cases.csv} and {@code pll_cases.csv} (GAP 4.12.1). */
class CasePicturesTest {
    @Test
    void shouldShowTheReferencesPatternWhenASequenceSolvesTheOrientation() throws IOException {
        for (String[] row : rows("oll_cases.csv")) {
            String picture = CasePictures.ofOrientation(row[0], row[1]);

            String seen = undone(row[1]);
            String expected = seen.replaceAll("[^U]", ".");
            assertThat(picture).as("case " + row[0]).isEqualTo(expected);
            assertThat(picture.chars().filter(letter -> letter == 'U')).hasSize(9);
        }
    }

    @Test
    void shouldShowThePiecesWhereTheSequenceTakesThemFromWhenItSolvesThePermutation() throws IOException {
        for (String[] row : rows("pll_cases.csv")) {
            String picture = CasePictures.ofPermutation(row[0], row[1]);
            String undone = undone(row[1]);

            // The same up to a turn of the whole cube about U, which renames the sides.
            List<String> turned = Stream.of("FRBL", "RBLF", "BLFR", "LFRB")
                    .map(names -> renamed(undone, names))
                    .map(letters -> letters.substring(0, 12) + sides(letters))
                    .toList();
            assertThat(turned).as("case " + row[0]).contains(picture.substring(0, 12) + sides(picture));
        }
    }

    @Test
    void shouldShowTwoPiecesCentresAndCrossWhenNothingIsKnownOfTheHand() {
        // By hand: the corner over its place with D at R, F in front, R up; the edge at UB with F at B and R up.
        assertThat(CasePictures.ofPair("RFU-BU", ""))
                .isEqualTo(".R..U...R" + "D...R..R." + "..F.F..F." + ".D.DDD.D." + "....L..L." + ".F..B..B.");
    }

    @ParameterizedTest
    @CsvSource({"U2 R U R', FR", "U' L' U' L, FL", "L U2 L' U L U' L', BL", "R' U R U2 R' U' R, BR", "d R U' R' d', FL"
    })
    void shouldTurnThePairToWhereTheHandDidItWhenItsSequenceSolvesIt(String sequence, Slot slot) {
        CubeState met = Sequence.parse(sequence).inverse().state();

        String picture = CasePictures.ofPair(PairCases.of(met, slot), sequence);

        assertThat(picture.replace(".", "")).hasSize(19);
        for (int number = 0; number < 54; number++) {
            assertThat(picture.charAt(number)).isIn('.', met.facelets().charAt(number));
        }
    }

    @Test
    void shouldDrawEveryCaseThatHasAName() {
        LastLayerCases.orientations().values().stream()
                .filter(name -> !name.equals(LastLayerCases.SKIP))
                .forEach(
                        name -> assertThat(CasePictures.ofOrientation(name, "")).hasSize(54));
        List<String> pictures = LastLayerCases.permutations().values().stream()
                .filter(name -> !name.equals(LastLayerCases.SKIP))
                .map(name -> CasePictures.ofPermutation(name, ""))
                .toList();

        assertThat(pictures).hasSize(21).doesNotHaveDuplicates();
    }

    @Test
    void shouldSayWhichCaseThereIsNotWhenAskedForIt() {
        assertThatThrownBy(() -> CasePictures.ofOrientation("58", "")).hasMessageContaining("58");
        assertThatThrownBy(() -> CasePictures.ofPermutation("Q", "")).hasMessageContaining("Q");
        assertThatThrownBy(() -> CasePictures.ofPair("URF-DF", "")).hasMessageContaining("URF-DF");
        assertThatThrownBy(() -> CasePictures.ofPair("ULB-UB", "")).hasMessageContaining("ULB-UB");
    }

    private static String undone(String sequence) {
        return Sequence.parse(sequence).inverse().state().facelets();
    }

    private static String renamed(String letters, String names) {
        StringBuilder renamed = new StringBuilder();
        for (char letter : letters.toCharArray()) {
            int side = "FRBL".indexOf(letter);
            renamed.append(side < 0 ? letter : names.charAt(side));
        }
        return renamed.toString();
    }

    private static String sides(String letters) {
        return letters.substring(9, 12)
                + letters.substring(18, 21)
                + letters.substring(36, 39)
                + letters.substring(45, 48);
    }

    private static List<String[]> rows(String file) throws IOException {
        try (InputStream table = Objects.requireNonNull(
                CasePicturesTest.class.getResourceAsStream("/fermata/fixtures/reference/" + file))) {
            return new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        }
    }
}
