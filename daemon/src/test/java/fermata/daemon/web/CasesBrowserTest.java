package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;

/** The page of cases in a real browser: from the range to the rows of one kind. */
class CasesBrowserTest {
    private static final String NAMES = ".cases h2";
    private static final int RANKED = 8;
    private static final int RANKED_PAIRS = 3;

    private static PageServer many;
    private static PageServer one;
    private static PageServer none;
    private static Browser browser;

    @BeforeAll
    static void open() {
        many = PageServer.start(RehearsedPractice.empty().meeting(MetCases.ofManySolves()), 0);
        one = PageServer.start(RehearsedPractice.empty().meeting(MetCases.ofOneSolve()), 0);
        none = PageServer.start(RehearsedPractice.empty(), 0);
        browser = new Browser();
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
        many.close();
        one.close();
        none.close();
    }

    @AfterEach
    void shouldNeitherComplainNorLeaveTheMachine() {
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests()).allMatch(address -> address.startsWith("http://127.0.0.1:"));
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 1280})
    void shouldComeFromTheNightAndShowOnlyPairsByKeyboard(int width) {
        browser.as(width, 844, "light", "reduce").open(many.url() + "/nights", ".message");
        browser.tabTo(".to-cases");
        browser.press(Keys.ENTER);
        browser.waitFor(NAMES);
        assertThat(browser.all(NAMES)).hasSize(RANKED);

        browser.tabTo("input[name=kind]");
        browser.press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);

        assertThat(browser.all(NAMES)).hasSize(RANKED_PAIRS);
        assertThat(browser.one(NAMES).getText()).isEqualTo("RFU-FL pair");
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 1280})
    void shouldShowOnlyPairsAndAnotherRangeByPointer(int width) {
        show(many, width, "light");

        browser.one("input[value=pairs]").click();
        assertThat(browser.all(NAMES)).hasSize(RANKED_PAIRS);
        browser.one(".over a[href='/cases?over=week']").click();
        browser.waitUntil("the week was not asked for", "return location.search === '?over=week'");
        browser.waitFor(NAMES);
    }

    @Test
    void shouldSayInWordsWhatAPictureShows() {
        show(many, 1280, "light");

        assertThat(title(1)).isEqualTo("PLL Ga: three corners go round, three edges go round");
        assertThat(title(3)).isEqualTo("OLL 45: 2 edges and 2 corners of the top already up");
        assertThat(title(5))
                .isEqualTo("URF-UB: corner above its place, cross colour up;"
                        + " edge at the back on top, front colour up");
        assertThat(title(6)).isEqualTo("PLL H: edges change places in two pairs");
    }

    private static String title(int row) {
        return browser.one(".case:nth-child(" + row + ") .case-picture title").getAttribute("textContent");
    }

    /** A pair's own corner of the cube is the one between its two colours, wherever the hand made it. */
    @Test
    void shouldNameTheSidesOfAPairAfterItsColours() {
        show(many, 1280, "light");

        assertThat(browser.all(".case:nth-child(5) .case-picture .side"))
                .extracting(side -> side.getText())
                .containsExactly("F", "R");
    }

    @Test
    void shouldRankNothingThatWasMetTooRarely() {
        show(one, 390, "light");

        assertThat(browser.all(NAMES)).isEmpty();
        assertThat(browser.one("main").getText())
                .contains("None was met five times yet", "3 cases met 3 times in 1 solve", "OLL 27 (1)");
    }

    @Test
    void shouldSayWhatCasesAreWhenNoneWasMet() {
        browser.as(390, 844, "dark", "reduce").open(none.url() + "/cases", ".message");

        assertThat(browser.one("main").getText()).contains("No case was met with a time.");
    }

    @ParameterizedTest
    @CsvSource({"light, 390", "dark, 390", "light, 1280", "dark, 1280"})
    void shouldSatisfyAxeWhenEverythingIsUnfolded(String scheme, int width) {
        show(many, width, scheme);
        browser.driver().executeScript("for (const one of document.querySelectorAll('details')) one.open = true");

        assertThat(new AxeBuilder()
                        .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"))
                        .analyze(browser.driver())
                        .getViolations())
                .isEmpty();
    }

    @Test
    void shouldNeverScrollSidewaysWhenTheWindowIsAsNarrowAsWcagAsks() {
        for (PageServer server : List.of(many, one, none)) {
            show(server, 320, "light");
            assertThat(browser.pixelsToScrollSideways()).isZero();
        }
    }

    private static void show(PageServer server, int width, String scheme) {
        browser.as(width, 844, scheme, "reduce").open(server.url() + "/cases", "main h1");
    }
}
