package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.selenium.AxeBuilder;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;

/** The page of a night in a real browser: from where the seconds went to the moment in a score. */
class NightBrowserTest {
    private static final String TWELVE = "/nights/2026-11-24";
    private static final String SIXTY = "/nights/2026-11-20";
    private static final String ONE = "/nights/2026-11-19";

    private static final RehearsedPractice PRACTICE =
            RehearsedPractice.threeNights().fuller();

    private static PageServer plain;
    private static PageServer fuller;
    private static Browser browser;

    @BeforeAll
    static void open() {
        plain = PageServer.start(RehearsedPractice.threeNights(), 0);
        fuller = PageServer.start(PRACTICE.rehearse("2026-11-20", 60, 11).rehearse("2026-11-19", 1, 12), 0);
        browser = new Browser();
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
        plain.close();
        fuller.close();
    }

    @AfterEach
    void shouldNotComplain() {
        assertThat(browser.complaints()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 1280})
    void shouldOpenAMomentFromASentenceByKeyboard(int width) {
        show(fuller, TWELVE, width, "light");

        browser.tabTo(".moments a");
        String wanted = browser.one(".moments a").getAttribute("href");
        browser.press(Keys.ENTER);
        browser.waitFor("#staves .note");

        // The score soon keeps the moment of its own cursor in the address, so only the solve is compared.
        assertThat(browser.driver().getCurrentUrl()).startsWith(wanted.replaceAll("#.*", "#t="));
        browser.waitUntil(
                "the cursor never came to the moment",
                "return Number(document.querySelector('#staves').getAttribute('aria-valuenow')) > 0");
    }

    @ParameterizedTest
    @ValueSource(ints = {390, 1280})
    void shouldOpenAMomentFromASentenceByPointer(int width) {
        show(fuller, TWELVE, width, "light");

        browser.one(".moments a").click();
        browser.waitFor("#staves .note");

        assertThat(browser.driver().getCurrentUrl()).contains("#t=");
    }

    /** From a median of the table to the stage of a solve that took just about as long. */
    @Test
    void shouldOpenTheStageThatTookWhatIsUsual() {
        show(fuller, TWELVE, 1280, "light");

        browser.one(".shares tbody tr:nth-child(3) a").click();
        browser.waitFor("#staves .note");
        browser.waitUntil(
                "no span was selected",
                "return document.querySelector('.moment strong').textContent.startsWith('Turns')");

        String id = browser.driver().getCurrentUrl().replaceAll(".*/solves/|#.*", "");
        Map<String, Object> pair =
                RehearsedPractice.listOf(PRACTICE.shown(id), "stages").get(2);
        assertThat(pair.get("name")).isEqualTo("pair2");
        assertThat(browser.one(".moment strong").getText())
                .isEqualTo("Turns " + ((Integer) pair.get("from") + 1) + " to " + pair.get("to"));
    }

    @Test
    void shouldOpenTheSolvesThatLoadedTheHand() {
        show(fuller, TWELVE, 390, "light");

        browser.one("section[aria-labelledby=hand] .moments a").click();

        browser.waitUntil(
                "the solves are not in view",
                "const top = document.querySelector('#solves').getBoundingClientRect().top;"
                        + " return top >= 0 && top < innerHeight");
    }

    @Test
    void shouldSayTheIntervalThatAWhiskerDraws() {
        show(fuller, TWELVE, 1280, "light");

        assertThat(browser.one("#seconds + div .whisker title").getAttribute("textContent"))
                .matches("\\d+\\.\\d\\d s a solve, between \\d+\\.\\d\\d and \\d+\\.\\d\\d");
    }

    @Test
    void shouldShowOnlyWhatTheNightTells() {
        show(plain, TWELVE, 1280, "light");
        assertThat(headings()).containsExactly("Times", "Where the seconds went", "Stages", "The hand", "Solves");

        show(fuller, TWELVE, 1280, "light");
        assertThat(headings())
                .containsExactly(
                        "Times",
                        "Where the seconds went",
                        "Stages",
                        "From night to night",
                        "The hand",
                        "Counted apart",
                        "Solves");
        assertThat(browser.one("main").getText()).contains("The time falls by 0.08 s a day.", "stretch it open");
        assertThat(browser.one(".over a[aria-current=page]").getText()).isEqualTo("the night");
    }

    /** A change that cannot be seen yet has an interval and no best guess. */
    @Test
    void shouldDrawNoPointWhereNoChangeCanBeSeenYet() {
        show(fuller, TWELVE, 1280, "light");

        assertThat(browser.all("#trends + div .whisker")).hasSize(2);
        assertThat(browser.all("#trends + div .whisker ellipse")).hasSize(1);
        assertThat(browser.all("#trends + div .whisker title"))
                .extracting(title -> title.getAttribute("textContent"))
                .containsExactly(
                        "\u22120.081 s a day, between \u22120.120 s and \u22120.031 s a day",
                        "no change can be seen yet; between \u22120.040 s and +0.066 s a day");
    }

    /** A solve that was given up after an hour lay about must not shrink the bars of those that count. */
    @Test
    void shouldMeasureTurningByTheSolvesThatCount() {
        RehearsedPractice practice = RehearsedPractice.empty().rehearse("2026-11-18", 3, 12);
        Map<String, Object> endless = practice.copy("2026-11-18-2", "endless");
        endless.put("day", "2026-11-18");
        endless.put("solved", false);
        endless.put("outcome", "abandoned");
        endless.put("time_us", 3_600_000_000L);
        practice.add(endless);
        try (PageServer server = PageServer.start(practice, 0)) {
            show(server, "/nights/2026-11-18", 1280, "light");

            assertThat(turningAndRest(1)).isGreaterThan(50);
            assertThat(turningAndRest(4)).isEqualTo(100);
            assertThat(browser.all(".spans .cut")).hasSize(1);
        }
    }

    private static double turningAndRest(int row) {
        return browser.all("tbody tr:nth-child(" + row + ") .spans rect").stream()
                .mapToDouble(part -> Double.parseDouble(part.getAttribute("width")))
                .sum();
    }

    private static List<String> headings() {
        return browser.all("main h2").stream().map(one -> one.getText()).toList();
    }

    @Test
    void shouldKeepTheFinerPlacesFoldedUntilTheyAreAskedFor() {
        show(fuller, TWELVE, 1280, "light");

        assertThat(browser.one("#seconds + div h3 + ol").getText()).startsWith("Of all causes looking costs most.");
        assertThat(browser.one("main").getText()).doesNotContain("Of all causes regrip");
        browser.one("#seconds + div summary").click();
        assertThat(browser.one("main").getText()).contains("Of all causes regrip costs most.");
    }

    @Test
    void shouldDrawTheShapeOfTheTimesOnlyWhenThereAreEnough() {
        show(fuller, SIXTY, 1280, "light");
        assertThat(browser.all(".times .curve")).hasSize(1);

        show(fuller, TWELVE, 1280, "light");
        assertThat(browser.all(".times .curve")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"light, 390", "dark, 390", "light, 1280", "dark, 1280"})
    void shouldSatisfyAxeWhenEverythingIsTold(String scheme, int width) {
        show(fuller, SIXTY, width, scheme);
        browser.driver().executeScript("for (const one of document.querySelectorAll('details')) one.open = true");

        assertThat(new AxeBuilder()
                        .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"))
                        .analyze(browser.driver())
                        .getViolations())
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {TWELVE, SIXTY, ONE})
    void shouldNeverScrollSidewaysWhenTheWindowIsAsNarrowAsWcagAsks(String path) {
        show(fuller, path, 320, "light");

        assertThat(browser.pixelsToScrollSideways()).isZero();
    }

    private static void show(PageServer server, String path, int width, String scheme) {
        browser.as(width, 844, scheme, "reduce").open(server.url() + path, ".times .head");
    }
}
