package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.PointerInput;
import org.openqa.selenium.interactions.Sequence;

/** Every page's main task in a real browser, at a phone's and a laptop's width. */
class PagesBrowserTest {
    private static final String DRAWN_SCORE = "#staves .note";
    private static final String DRAWN_NIGHT = ".times .head";

    private static RehearsedPractice practice;
    private static PageServer server;
    private static Browser browser;

    @BeforeAll
    static void open() {
        practice = RehearsedPractice.threeNights();
        addAwkwardSolves();
        server = PageServer.start(practice, 0);
        browser = new Browser();
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
        server.close();
    }

    @AfterEach
    void shouldNeitherComplainNorLeaveTheMachine() {
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests()).allMatch(address -> address.startsWith(server.url() + "/"));
    }

    private static void addAwkwardSolves() {
        Map<String, Object> gap = practice.copy("2026-11-24-3", "gap");
        gap.put("gaps", List.of(Map.of("after_turn", 9, "start_us", 2_000_000, "end_us", 2_600_000, "lost", 2)));
        practice.add(gap);
        Map<String, Object> judged = practice.copy("2026-11-24-3", "judged");
        judged.put(
                "rests",
                List.of(Map.of("after_turn", 9, "start_us", 2_000_000, "length_us", 900_000, "fermata", true)));
        practice.add(judged);
        Map<String, Object> clockless = practice.copy("2026-11-24-4", "clockless");
        clockless.put("clock", "none");
        clockless.put("time_us", null);
        clockless.put("rests", List.of());
        clockless.put("turns", withoutTimes(RehearsedPractice.listOf(clockless, "turns")));
        practice.add(clockless);
        Map<String, Object> blocks = practice.copy("2026-11-24-5", "blocks");
        blocks.put("method", "Roux");
        blocks.put("cross_colour", null);
        blocks.put("stages", renamed(RehearsedPractice.listOf(blocks, "stages")));
        practice.add(blocks);
        Map<String, Object> untold = practice.copy("2026-11-24-6", "untold");
        untold.put("method", "untold");
        untold.put("stages", List.of());
        untold.put("rests", List.of());
        practice.add(untold);
        Map<String, Object> turnless = practice.copy("2026-11-24-7", "turnless");
        turnless.put("turns", List.of());
        practice.add(turnless);
    }

    private static List<Map<String, Object>> withoutTimes(List<Map<String, Object>> turns) {
        List<Map<String, Object>> stripped = new ArrayList<>();
        for (Map<String, Object> turn : turns) {
            Map<String, Object> copy = new LinkedHashMap<>(turn);
            copy.put("at_us", null);
            stripped.add(copy);
        }
        return stripped;
    }

    private static List<Map<String, Object>> renamed(List<Map<String, Object>> stages) {
        List<String> names = List.of("block1", "block2", "corners", "last_edges", "a", "b", "c", "d");
        List<Map<String, Object>> other = new ArrayList<>();
        for (int index = 0; index < stages.size(); index++) {
            Map<String, Object> copy = new LinkedHashMap<>(stages.get(index));
            copy.put("name", names.get(index));
            copy.put("case", null);
            other.add(copy);
        }
        return other;
    }

    @ParameterizedTest
    @CsvSource({"390, 844", "1280, 800"})
    void shouldOpenASolveFromTheNightByKeyboardAndStepThroughIt(int width, int height) {
        browser.as(width, height, "light", "no-preference").open(server.url() + "/nights/2026-11-24", DRAWN_NIGHT);

        browser.tabTo(".times .head");
        browser.press(Keys.ENTER);
        browser.waitFor(DRAWN_SCORE);
        browser.tabTo("#staves");
        browser.press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_LEFT);

        assertThat(value()).isEqualTo(2);
        assertThat(browser.one("#staves").getAttribute("aria-valuetext"))
                .startsWith("Turn 2 of ")
                .contains(" s, cross");
        browser.press(Keys.END);
        assertThat(value()).isEqualTo(last());
        browser.press(Keys.HOME);
        assertThat(value()).isZero();
    }

    @Test
    void shouldStepByStageAndRestWhenAsked() {
        openSolve("2026-11-24-2", 1280);
        List<Map<String, Object>> stages = RehearsedPractice.listOf(practice.shown("2026-11-24-2"), "stages");
        int firstRest = (Integer) RehearsedPractice.listOf(practice.shown("2026-11-24-2"), "rests")
                .get(0)
                .get("after_turn");

        browser.tabTo("#staves");
        browser.press(Keys.PAGE_DOWN);
        assertThat(value()).isEqualTo(stages.get(1).get("from"));
        browser.press(Keys.PAGE_UP);
        assertThat(value()).isZero();
        browser.press(Keys.ARROW_DOWN);
        assertThat(value()).isEqualTo(firstRest + 1);
        assertThat(browser.one("[aria-live=polite]").getAttribute("textContent"))
                .contains("then a rest of");
        browser.press(Keys.ARROW_UP);
        assertThat(value()).isZero();
    }

    @Test
    void shouldLeaveLettersAloneWhenTheyArePressed() {
        openSolve("2026-11-24-2", 1280);
        browser.tabTo("#staves");

        browser.press("r", "u", "R", "U", "j", "k", "f", "?");

        assertThat(value()).isZero();
    }

    @ParameterizedTest
    @CsvSource({"390, no-preference", "1280, reduce"})
    void shouldPlayAndPauseWhenSpaceOrTheButtonAsks(int width, String motion) {
        browser.as(width, 844, "light", motion).open(server.url() + "/solves/2026-11-24-2", DRAWN_SCORE);
        browser.tabTo("#staves");

        browser.press(Keys.SPACE);
        browser.waitUntil(
                "playing never moved the cursor", "return Number(document.querySelector('#staves').dataset.turn) > 1");
        assertThat(browser.one("[aria-live=polite]").getAttribute("textContent"))
                .doesNotContain("Turn 3");
        browser.one("button[aria-label=Pause]").click();
        int paused = noteAtCursor();
        browser.waitFor("button[aria-label=Play]");

        assertThat(noteAtCursor()).isEqualTo(paused);
    }

    @ParameterizedTest
    @CsvSource({"390, TOUCH", "1280, MOUSE"})
    void shouldMoveToTheNoteWhenItIsPointedAt(int width, PointerInput.Kind kind) {
        openSolve("2026-11-24-2", width);
        WebElement note = browser.one(".event[data-turn='4']");
        PointerInput pointer = new PointerInput(kind, "by " + kind);
        Sequence tap = new Sequence(pointer, 0)
                .addAction(pointer.createPointerMove(Duration.ZERO, PointerInput.Origin.fromElement(note), 0, 0))
                .addAction(pointer.createPointerDown(PointerInput.MouseButton.LEFT.asArg()))
                .addAction(pointer.createPointerUp(PointerInput.MouseButton.LEFT.asArg()));

        browser.driver().perform(List.of(tap));
        browser.waitUntil(
                "the cursor never came to the note",
                "return document.querySelector('#staves').getAttribute('aria-valuenow') === '5'");
        browser.one("button[aria-label='One turn on']").click();

        assertThat(value()).isEqualTo(6);
    }

    @Test
    void shouldOpenAtTheMomentThatTheAddressNames() {
        RehearsedSolve truth = practice.truth("2026-11-24-2");
        browser.as(1280, 800, "light", "no-preference").open(server.url() + "/solves/2026-11-24-2#t=5.00", DRAWN_SCORE);
        long heard = RehearsedPractice.listOf(practice.shown("2026-11-24-2"), "turns").stream()
                .filter(turn -> (Long) turn.get("at_us") <= 5_000_000)
                .count();

        assertThat(truth).isNotNull();
        assertThat((long) value()).isEqualTo(heard);
    }

    @Test
    void shouldShowTheVeryCubeThatTheDecoderHasAtEveryStep() {
        openSolve("2026-11-24-2", 1280);
        RehearsedSolve truth = practice.truth("2026-11-24-2");
        String down = (String) browser.driver()
                .executeAsyncScript(
                        CubeScripts.HOLD_OF_COLOUR,
                        practice.shown("2026-11-24-2").get("cross_colour"),
                        practice.shown("2026-11-24-2").get("face_colours"));

        for (int position = 0; position <= last(); position += 5) {
            browser.driver().executeScript("location.hash = 't=' + arguments[0]", secondsAt(position));
            browser.waitUntil(
                    "the cursor never came to turn " + position,
                    "return document.querySelector('#staves').getAttribute('aria-valuenow') === '" + position + "'");
            String expected = CubeScripts.seen(truth.stateAfter(position), down);
            browser.waitUntil(
                    "the drawn cube is not the decoder's after turn " + position,
                    "return (" + CubeScripts.DRAWN + ")() === '" + CubeScripts.hiddenFaces(expected) + "'");
        }
    }

    private String secondsAt(int position) {
        List<Map<String, Object>> turns = RehearsedPractice.listOf(practice.shown("2026-11-24-2"), "turns");
        return position == 0
                ? "-1"
                : String.valueOf((Long) turns.get(position - 1).get("at_us") / 1e6);
    }

    @ParameterizedTest
    @CsvSource({
        "gap, 2 turns lost",
        "clockless, no clock",
        "blocks, first block",
        "untold, No method could be told",
        "judged, a fermata: what came next"
    })
    void shouldDrawAwkwardSolvesAndSayWhatIsOdd(String id, String words) {
        openSolve(id, 1280);

        assertThat(browser.one("main").getText()).containsIgnoringCase(words);
        assertThat(browser.all("#staves .event"))
                .hasSize(RehearsedPractice.listOf(practice.shown(id), "turns").size());
    }

    @ParameterizedTest
    @CsvSource({
        "/nights/2026-11-24, light, 390",
        "/nights/2026-11-24, dark, 1280",
        "/solves/2026-11-24-2, light, 390",
        "/solves/2026-11-24-2, dark, 1280",
        "/solves/2026-11-24-2, light, 1280",
        "/solves/gap, dark, 390",
        "/nights/2020-01-01, dark, 390",
        "/nights/2026-11-24?over=week, light, 390",
        "/nights/2026-11-24?over=all, dark, 1280",
        "/solves/turnless, light, 1280"
    })
    void shouldSatisfyAxeWhenEverythingIsUnfolded(String path, String scheme, int width) {
        browser.as(width, 844, scheme, "reduce").open(server.url() + path, "h1");
        browser.waitUntil("the page never was filled", "return document.querySelector('main h1') !== null");
        browser.driver().executeScript("for (const one of document.querySelectorAll('details')) one.open = true");

        assertThat(violations()).isEmpty();
    }

    @Test
    void shouldSatisfyAxeWhenThereIsNoSuchSolve() {
        browser.as(390, 844, "light", "reduce").open(server.url() + "/solves/none", "main h1");

        assertThat(violations()).isEmpty();
        assertThat(browser.complaints()).allMatch(words -> words.contains("404"));
    }

    @Test
    void shouldSayInWordsForPeopleThatThereIsNoSuchSolve() {
        browser.as(390, 844, "light", "reduce").open(server.url() + "/solves/none", "main h1");

        assertThat(browser.one("main").getText())
                .contains("No solve has this address")
                .doesNotContain("/api/");
        assertThat(browser.complaints()).allMatch(words -> words.contains("404"));
    }

    @ParameterizedTest
    @CsvSource({"/solves/none, content", "/solves/turnless, content", "/solves/2026-11-24-2, staves"})
    void shouldSkipToWhatTheSolvesPageHas(String path, String target) {
        browser.as(1280, 800, "light", "reduce").open(server.url() + path, "main h1");

        browser.tabTo(".skip");
        browser.press(Keys.ENTER);

        assertThat(browser.driver().switchTo().activeElement().getAttribute("id"))
                .isEqualTo(target);
        assertThat(browser.complaints()).allMatch(words -> words.contains("404"));
    }

    private static List<String> violations() {
        Results results = new AxeBuilder()
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"))
                .analyze(browser.driver());
        return results.getViolations().stream().map(PagesBrowserTest::explained).toList();
    }

    private static String explained(Rule rule) {
        return rule.getId() + ": " + rule.getHelp() + " at "
                + rule.getNodes().stream()
                        .limit(3)
                        .map(node -> node.getHtml() + " "
                                + node.getAny().stream()
                                        .map(check -> check.getMessage())
                                        .toList())
                        .toList();
    }

    @ParameterizedTest
    @CsvSource({"/nights/2026-11-24", "/solves/2026-11-24-2", "/solves/gap", "/nights/2020-01-01"})
    void shouldNeverScrollSidewaysWhenTheWindowIsAsNarrowAsWcagAsks(String path) {
        browser.as(320, 640, "light", "reduce").open(server.url() + path, "main h1");

        assertThat(browser.pixelsToScrollSideways()).isZero();
    }

    @Test
    void shouldRefuseAnInlineScriptWhenSomebodySlipsOneIn() {
        openSolve("2026-11-24-2", 1280);

        Object ran = browser.driver()
                .executeScript("const slipped = document.createElement('script');"
                        + "slipped.textContent = 'window.slippedIn = true'; document.body.append(slipped);"
                        + "return window.slippedIn === true;");

        assertThat(ran).isEqualTo(false);
        assertThat(browser.complaints()).anySatisfy(words -> assertThat(words).contains("Content Security Policy"));
    }

    @Test
    void shouldSayWhatToDoWhenNothingWasRecorded() {
        try (PageServer bare = PageServer.start(RehearsedPractice.empty(), 0)) {
            browser.as(390, 844, "light", "reduce").open(bare.url() + "/", ".message");

            assertThat(browser.one("main").getText()).contains("fermata listen").contains("fermata demo");
            assertThat(browser.requests()).allMatch(address -> address.startsWith(bare.url() + "/"));
        }
    }

    private void openSolve(String id, int width) {
        browser.as(width, 844, "light", "no-preference").open(server.url() + "/solves/" + id, DRAWN_SCORE);
    }

    private int value() {
        return Integer.parseInt(browser.one("#staves").getAttribute("aria-valuenow"));
    }

    private int last() {
        return Integer.parseInt(browser.one("#staves").getAttribute("aria-valuemax"));
    }

    private int noteAtCursor() {
        return Integer.parseInt(browser.one("#staves").getAttribute("data-turn"));
    }
}
