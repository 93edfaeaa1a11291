package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.live.HandDriven;
import fermata.daemon.live.TellingJournal;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.decoder.stream.OpenLayout;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every page in every state that it must bear, at a phone's and a laptop's width, by day and by night. */
class StatesBrowserTest {
    private static final String DAY = "2026-11-24";
    private static final List<Integer> WIDTHS = List.of(390, 1280);
    private static final List<String> SCHEMES = List.of("light", "dark");
    /** Each width and each theme once. */
    private static final List<String> AXE_LOOKS = List.of("390 dark", "1280 light");

    /** Axe would take half a minute, and what is on them is on the pages of 60 solves too. */
    private static final Set<String> TOO_LARGE_FOR_AXE = Set.of("a night of 400 solves", "cases of 400 solves");

    private static final int NARROWEST = 320;

    /** What is promised for a first load, with the data that the page asks for, as it goes over the wire. */
    private static final int FIRST_LOAD_BYTES = 250_000;

    private static final String LOADED_BYTES =
            "return performance.getEntriesByType('resource').concat(performance.getEntriesByType('navigation'))"
                    + ".reduce((sum, one) => sum + one.encodedBodySize, 0)";

    @TempDir
    private static Path home;

    private static final Map<String, Page> PAGES = new LinkedHashMap<>();
    private static Store store;
    private static HandDriven cube;
    private static Browser browser;

    /** A server, a path on it, and what the page draws last. */
    private record Page(PageServer server, String path, String drawn) {}

    @BeforeAll
    static void serve() {
        night("a night without solves", RehearsedPractice.empty(), ".message");
        night("a night of 1 solve", RehearsedPractice.empty().rehearse(DAY, 1, 1), solveLinks());
        night("a night of 60 solves", RehearsedPractice.empty().rehearse(DAY, 60, 60), solveLinks());
        night("a night of 400 solves", RehearsedPractice.empty().rehearse(DAY, 400, 400), solveLinks());
        cases("cases of no solve", MetCases.none(), ".message");
        cases("cases of 1 solve", MetCases.ofOneSolve(), ".plate .case-picture");
        cases("cases of 60 solves", MetCases.ofManySolves(), ".cases .case-picture");
        cases("cases of 400 solves", MetCases.ofManyNights(), ".cases .case-picture");
        RehearsedPractice samples = RehearsedPractice.empty().rehearse(DAY, 1, 1);
        PageServer scores = PageServer.start(samples, 0);
        PAGES.put("the score of no hand", new Page(scores, "/solves/" + DAY + "-1", "#staves .note"));
        for (Map<String, Object> shown : List.of(
                ScoreSamples.threeHundred(), ScoreSamples.gapped(), ScoreSamples.blocks(), ScoreSamples.everything())) {
            samples.add(shown);
            PAGES.put("the score " + shown.get("id"), new Page(scores, "/solves/" + shown.get("id"), "#staves .note"));
        }
        listen();
        browser = new Browser();
    }

    private static void night(String name, RehearsedPractice practice, String drawn) {
        PAGES.put(name, new Page(PageServer.start(practice, 0), "/nights", drawn));
    }

    private static void cases(String name, Map<String, Object> met, String drawn) {
        PAGES.put(name, new Page(PageServer.start(RehearsedPractice.empty().meeting(met), 0), "/cases", drawn));
    }

    private static String solveLinks() {
        return "main a[href*='/solves/" + DAY + "']";
    }

    private static void listen() {
        Origin cook = new Origin("galley cube", "cook", Hand.LEFT);
        store = Store.openForWriting(new Home(home), () -> LocalDateTime.of(2026, 11, 24, 20, 0));
        long now = System.nanoTime();
        CaptureStart start =
                new CaptureStart(UUID.randomUUID(), "boot", Instant.EPOCH, now, ZoneOffset.UTC, cook, "radio");
        long id = store.captures().begin(start, OpenLayout.profileText(), "").captureId();
        cube = new HandDriven(
                new TellingJournal(store.captures(), id, cook, now),
                "D2 F' U2 L B' R2 F D' L2 U R' B2 D F2 U' L' B R U2 F' D");
        cube.turn("D2 F' R", 300);
        PageServer board = PageServer.start(RehearsedPractice.empty(), cube.board, Audience.thisMachine(), 0);
        PAGES.put("now", new Page(board, "/now", ".ossia .note"));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
        PAGES.values().stream().map(Page::server).distinct().forEach(PageServer::close);
        cube.close();
        store.close();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a night without solves",
                "a night of 1 solve",
                "a night of 60 solves",
                "a night of 400 solves",
                "cases of no solve",
                "cases of 1 solve",
                "cases of 60 solves",
                "cases of 400 solves",
                "the score of no hand",
                "the score three-hundred",
                "the score gapped",
                "the score blocks",
                "the score everything",
                "now"
            })
    void shouldBeWholeQuietAndWithinTheSheetInEveryLook(String name) {
        Page page = PAGES.get(name);
        for (int width : WIDTHS) {
            for (String scheme : SCHEMES) {
                String look = name + " at " + width + " px, " + scheme;
                open(page, width, scheme);
                assertThat(browser.pixelsToScrollSideways())
                        .as("pixels to scroll sideways, %s", look)
                        .isZero();
                assertThat(shownText()).as("words, %s", look).doesNotContainPattern("\\b(null|undefined|NaN)\\b");
                if (AXE_LOOKS.contains(width + " " + scheme) && !TOO_LARGE_FOR_AXE.contains(name)) {
                    assertThat(violations()).as(look).isEmpty();
                }
                assertQuiet(page, look);
            }
        }
        open(page, NARROWEST, "light");
        assertThat(browser.pixelsToScrollSideways())
                .as("pixels to scroll sideways, %s", name)
                .isZero();
        assertThat(((Number) browser.driver().executeScript(LOADED_BYTES)).intValue())
                .as("bytes of a first load, %s", name)
                .isBetween(1_000, FIRST_LOAD_BYTES);
        assertQuiet(page, name);
    }

    private static void open(Page page, int width, String scheme) {
        browser.requests();
        browser.as(width, 844, scheme, "reduce").open(page.server().url() + page.path(), page.drawn());
    }

    private static String shownText() {
        return (String) browser.driver().executeScript("return document.body.innerText");
    }

    private static List<String> violations() {
        return new AxeBuilder()
                        .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"))
                        .analyze(browser.driver())
                        .getViolations()
                        .stream()
                        .map(StatesBrowserTest::explained)
                        .toList();
    }

    private static String explained(Rule rule) {
        return rule.getId() + ": " + rule.getHelp() + " at "
                + rule.getNodes().get(0).getHtml();
    }

    private static void assertQuiet(Page page, String look) {
        assertThat(browser.complaints()).as("complaints, %s", look).isEmpty();
        assertThat(browser.requests())
                .as("requests, %s", look)
                .isNotEmpty()
                .allMatch(address -> address.startsWith(page.server().url() + "/"));
    }
}
