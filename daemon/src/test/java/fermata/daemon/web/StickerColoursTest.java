package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The colours in tokens.css, by numbers: far enough apart for every eye, and readable. */
class StickerColoursTest {
    private static final List<String> STICKERS = List.of("white", "yellow", "orange", "red", "green", "blue");

    // Source: Sharma, Wu, Dalal, "The CIEDE2000 color-difference formula", 2005, table 1, pairs 1, 4, 7, 13, 17, 19,
    // 25, 33.
    @ParameterizedTest
    @CsvSource({
        "50.0000, 2.6772, -79.7751, 50.0000, 0.0000, -82.7485, 2.0425",
        "50.0000, -1.3802, -84.2814, 50.0000, 0.0000, -82.7485, 1.0000",
        "50.0000, 0.0000, 0.0000, 50.0000, -1.0000, 2.0000, 2.3669",
        "50.0000, -0.0010, 2.4900, 50.0000, 0.0010, -2.4900, 4.8045",
        "50.0000, -0.0010, 2.4900, 50.0000, 0.0011, -2.4900, 4.7461",
        "50.0000, 2.5000, 0.0000, 73.0000, 25.0000, -18.0000, 27.1492",
        "50.0000, 2.5000, 0.0000, 56.0000, -27.0000, -3.0000, 31.9030",
        "60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644",
        "6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377"
    })
    void shouldMeasureDifferencesAsPublishedWhenGivenThePublishedPairs(
            double l1, double a1, double b1, double l2, double a2, double b2, double published) {
        double measured = ColourDifference.ciede2000(new double[] {l1, a1, b1}, new double[] {l2, a2, b2});

        assertThat(measured).isCloseTo(published, within(0.0001));
    }

    @ParameterizedTest
    @EnumSource(ColourVision.class)
    void shouldKeepAnyTwoStickersApartWhateverTheVision(ColourVision vision) throws IOException {
        for (String one : STICKERS) {
            for (String other : STICKERS.subList(0, STICKERS.indexOf(one))) {
                double difference = ColourDifference.ciede2000(
                        Colour.lab(vision.see(token("sticker-" + one))),
                        Colour.lab(vision.see(token("sticker-" + other))));

                // The searched set reaches 19.5 at worst; the usual muted set falls to 8.4 (orange and green).
                assertThat(difference)
                        .as(one + " and " + other + " under " + vision)
                        .isGreaterThanOrEqualTo(19.4);
            }
        }
    }

    // WCAG 2.2, 1.4.11: 3:1 for graphics that carry meaning.
    /** Design tokens stand in one file; no other style may name a colour. */
    @Test
    void shouldNameColoursInTheTokensOnly() {
        assertThat(SiteFiles.NAMES)
                .filteredOn(name -> name.endsWith(".css") && !name.equals("page/tokens.css"))
                .isNotEmpty()
                .allSatisfy(name -> assertThat(SiteFiles.text(name))
                        .doesNotContainPattern("#[0-9a-fA-F]{3,8}\\b|\\b(rgb|hsl|oklch)a?\\("));
    }

    @Test
    void shouldSetEveryStickerOffFromTheGaps() throws IOException {
        for (String name : STICKERS) {
            assertThat(Colour.contrast(token("sticker-" + name), token("sticker-gap")))
                    .as(name)
                    .isGreaterThan(3.2);
        }
    }

    // WCAG 2.2, 1.4.3: 4.5:1 for text.
    @Test
    void shouldMakeEveryLetterReadableOnItsSticker() throws IOException {
        for (String name : STICKERS) {
            String letter = name.equals("red") || name.equals("blue") ? "letter-light" : "letter-dark";

            assertThat(Colour.contrast(token("sticker-" + name), token(letter)))
                    .as(name)
                    .isGreaterThan(4.5);
        }
    }

    @ParameterizedTest
    @CsvSource({"0", "1"})
    void shouldMakeWordsAndLinesReadableOnPaperInBothThemes(int theme) throws IOException {
        double[] paper = token("paper", theme);

        assertThat(Colour.contrast(token("ink", theme), paper)).isGreaterThan(7);
        assertThat(Colour.contrast(token("ink-quiet", theme), paper)).isGreaterThan(4.5);
        assertThat(Colour.contrast(token("accent", theme), paper)).isGreaterThan(4.5);
        assertThat(Colour.contrast(token("rule", theme), paper)).isGreaterThan(3);
        assertThat(Colour.contrast(token("ink-likely", theme), paper)).isGreaterThan(4.5);
        assertThat(Colour.contrast(token("ink-doubtful", theme), paper)).isGreaterThan(3);
        assertThat(Colour.contrast(token("ink-quiet", theme), token("tint", theme)))
                .isGreaterThan(4.5);
        assertThat(Colour.contrast(token("accent", theme), token("accent-tint", theme)))
                .isGreaterThan(4.5);
    }

    private static double[] token(String name) throws IOException {
        return token(name, 0);
    }

    /** The token's value where it is set for the first (light) or second (dark) time. */
    private static double[] token(String name, int occurrence) throws IOException {
        try (InputStream css = PageServer.class.getResourceAsStream("page/tokens.css")) {
            Matcher values = Pattern.compile("--" + name + ": (#[0-9a-f]{6});")
                    .matcher(new String(css.readAllBytes(), StandardCharsets.UTF_8));
            for (int found = 0; found <= occurrence; found++) {
                assertThat(values.find()).as("--" + name + " in tokens.css").isTrue();
            }
            return Colour.linear(values.group(1));
        }
    }
}
