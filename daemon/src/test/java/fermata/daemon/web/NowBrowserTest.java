package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.selenium.AxeBuilder;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.bluetooth.LinkStatus;
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
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;

/** What the page of the moment shows while a test turns the cube. */
class NowBrowserTest {
    private static final String SCRAMBLE = "D2 F' U2 L B' R2 F D' L2 U R' B2 D F2 U' L' B R U2 F' D";
    private static final String TASK = ".task";

    private static Browser browser;

    @TempDir
    private Path home;

    private Store store;
    private HandDriven cube;
    private PageServer server;

    @BeforeAll
    static void openBrowser() {
        browser = new Browser();
    }

    @AfterAll
    static void closeBrowser() {
        browser.close();
    }

    @BeforeEach
    void open() {
        Origin cook = new Origin("galley cube", "cook", Hand.LEFT);
        store = Store.openForWriting(new Home(home), () -> LocalDateTime.of(2026, 11, 24, 20, 0));
        long now = System.nanoTime();
        CaptureStart start =
                new CaptureStart(UUID.randomUUID(), "boot", Instant.EPOCH, now, ZoneOffset.UTC, cook, "radio");
        long id = store.captures().begin(start, OpenLayout.profileText(), "").captureId();
        cube = new HandDriven(new TellingJournal(store.captures(), id, cook, now), SCRAMBLE, "R U F");
        cube.reportBattery(87);
        server = PageServer.start(RehearsedPractice.empty(), cube.board, Audience.thisMachine(), 0);
    }

    @AfterEach
    void shouldNeitherComplainNorLeaveTheMachine() {
        List<String> complaints = browser.complaints();
        List<String> requests = browser.requests();
        // Each test is a browser's first evening.
        browser.driver().executeScript("localStorage.clear()");
        browser.driver().get("about:blank");
        server.close();
        cube.close();
        store.close();
        assertThat(complaints).isEmpty();
        assertThat(requests).allMatch(address -> address.startsWith(server.url() + "/"));
    }

    @ParameterizedTest
    @CsvSource({"390, 844", "1280, 800"})
    void shouldFollowTheScrambleWithACursorAndMendAWrongTurn(int width, int height) {
        openNow(width, height, "light");
        assertThat(browser.one("h1").getText()).isEqualTo("Listening");
        assertThat(browser.one(".under").getText()).contains("Battery 87 %");
        assertThat(browser.all(".lines .note")).hasSize(21);
        assertThat(nextWord()).isEqualTo("D2");

        cube.turn("D2 F' U", 300);
        await("U2", "return document.querySelector('.again') !== null");
        cube.turn("U L", 300);
        awaitNext("B'");
        cube.turn("R", 300);
        await("the mending", "return document.querySelector('.ossia .word')?.textContent === \"R'\"");
        assertThat(browser.one(TASK).getText()).contains("wrong turn");
        assertThat(browser.one("[aria-live=polite]").getAttribute("textContent"))
                .isEqualTo("A wrong turn. Mend it: right, quarter, counter-clockwise.");
        cube.turn("R'", 300);

        awaitNext("B'");
        assertThat(browser.all(".ossia")).isEmpty();
    }

    @Test
    void shouldTellTheTurnTimeSmallAfterTheSolveAndShowTheNextScramble() {
        openNow(390, 844, "light");
        cube.turn(SCRAMBLE, 300);
        awaitTask("Scrambled.");
        String solution = inverse(SCRAMBLE);
        String[] halves = {
            solution.substring(0, 20).strip(), solution.substring(20).strip()
        };
        cube.turn(halves[0], 300);
        awaitTask("Solving");
        await("notes of the solve", "return document.querySelectorAll('.lines .note').length >= 5");
        cube.turn(halves[1].split(" ")[0], 2_000);
        cube.turn(halves[1].substring(halves[1].indexOf(' ') + 1), 300);
        awaitTask("The next scramble");

        int turns = solution.split(" ").length;
        assertThat(browser.one(".result").getText())
                .contains(turns + " turns.")
                .contains(String.format(Locale.ROOT, "%.2f s", ((turns - 2) * 300 + 2_000) / 1e3))
                .contains("The longest rest was 2.00 s, after turn " + halves[0].split(" ").length + ".");
        assertThat(browser.all(".lines .note")).hasSize(3);
    }

    @Test
    void shouldSayNotListeningLargerThanAnythingElseAndComeBackByItself() {
        openNow(390, 844, "dark");
        cube.link(LinkStatus.State.SCANNING, "");
        await("not listening", "return document.querySelector('h1').textContent === 'Not listening'");

        assertThat(browser.one(".under").getText()).contains("Turn a face to wake it");
        assertThat((Boolean) browser.driver()
                        .executeScript("const size = (at) => parseFloat(getComputedStyle(at).fontSize);"
                                + "const title = size(document.querySelector('h1'));"
                                + "const rest = [...document.querySelectorAll('main *:not(h1)')];"
                                + "return rest.every((at) => size(at) < title)"))
                .isTrue();
        cube.link(LinkStatus.State.LISTENING, "");
        await("listening again", "return document.querySelector('h1').textContent === 'Listening'");
    }

    @Test
    void shouldComeBackWithTheWholeStateWhenTheServerWasAway() {
        openNow(1280, 800, "light");
        int port = server.port();
        server.close();
        await("the loss", "return document.querySelector('h1').textContent === 'Not listening'");
        assertThat(browser.one(".under").getText()).contains("has lost the board");
        cube.turn("D2 F' U2", 300);
        server = PageServer.start(RehearsedPractice.empty(), cube.board, Audience.thisMachine(), port);

        awaitNext("L");
        assertThat(browser.complaints()).allMatch(words -> words.contains("/api/live"));
    }

    @Test
    void shouldCountTheInspectionOfACuedAttempt() {
        openCued();
        cube.turn(SCRAMBLE, 300);

        awaitTask("Scrambled.");
        await(
                "inspection",
                "return /^Inspection [1-9] s$/.test(document.querySelector('.inspection:not([hidden])').textContent)");
    }

    @Test
    void shouldAddTwoSecondsWhenACuedAttemptBeganLate() {
        openCued();
        cube.turn(SCRAMBLE, 300);
        String solution = inverse(SCRAMBLE);
        cube.turn(solution.split(" ")[0], 16_500);
        cube.turn(solution.substring(solution.indexOf(' ') + 1), 300);
        awaitTask("The next scramble");

        // WCA Regulations A4d1: a start from 15 s on and before 17 s costs two seconds.
        assertThat(browser.one(".result").getText())
                .contains("8.00+")
                .containsPattern("Inspection 15\\.\\d\\d s: \\+2");
    }

    private void openCued() {
        openNow(1280, 800, "light");
        browser.tabTo("input[name=cued]");
        browser.press(Keys.SPACE);
    }

    @Test
    void shouldOpenTheEveningWithOneKeyAndNeedNoneAfterIt() {
        openNow(390, 844, "light");
        browser.tabTo("button.open");
        browser.press(Keys.ENTER);
        await("the evening", "return document.querySelector('.opening').textContent.includes('The evening is open')");

        cube.turn(SCRAMBLE, 300);
        awaitTask("Scrambled.");
    }

    @ParameterizedTest
    @CsvSource({"390, 844", "1280, 800"})
    void shouldCoverNothingBeforeTheEveningIsOpenedNorAfter(int width, int height) {
        openNow(width, height, "light");
        assertThat(covered()).isEqualTo(0L);
        browser.one("button.open").click();
        await("the evening", "return document.querySelector('.opening').textContent.includes('The evening is open')");

        assertThat(covered()).isEqualTo(0L);
        assertThat(browser.driver().executeScript("return document.querySelector('main').lastElementChild.className"))
                .isEqualTo("opening");
    }

    /** On how many of twenty scrolls the place of the one touch lies over the evening. */
    private static Object covered() {
        return browser.driver().executeScript("""
                const box = (name) => document.querySelector(name).getBoundingClientRect();
                let covered = 0;
                for (let step = 0; step <= 20; step++) {
                  scrollTo(0, (step / 20) * document.documentElement.scrollHeight);
                  const [place, under] = [box('.opening'), box('.evening')];
                  if (place.top < under.bottom && place.bottom > under.top) covered++;
                }
                return covered;
                """);
    }

    @Test
    void shouldRememberTheSolversChoicesWhenThePageIsOpenedAgain() {
        openNow(390, 844, "light");
        assertThat(choices()).isEqualTo("sound true, cued false, finding true");
        for (String name : List.of("sound", "cued", "finding")) {
            browser.tabTo("input[name=" + name + "]");
            browser.press(Keys.SPACE);
        }
        openNow(390, 844, "light");

        assertThat(choices()).isEqualTo("sound false, cued true, finding false");
        cube.turn(SCRAMBLE, 300);
        await("inspection", "return document.querySelector('.inspection:not([hidden])') !== null");
    }

    private static Object choices() {
        return browser.driver()
                .executeScript("return [...document.querySelectorAll('.choices input')]"
                        + ".map((box) => box.name + ' ' + box.checked).join(', ')");
    }

    @Test
    void shouldTakeTheWordThatTheCubeIsSolvedAndGiveAnotherScrambleWhenAsked() {
        openNow(1280, 800, "light");
        cube.turn("R L", 300);
        await("mending", "return document.querySelector('.ossia') !== null");
        browser.all(".actions button").get(1).click();
        awaitNext("D2");
        browser.all(".actions button").get(0).click();

        awaitNext("R");
    }

    @ParameterizedTest
    @CsvSource({"light, 390", "dark, 390", "light, 1280", "dark, 1280"})
    void shouldSatisfyAxeInEveryPhase(String scheme, int width) {
        openNow(width, 844, scheme);
        assertNoViolations();
        cube.turn("D2 F' R", 300);
        await("mending", "return document.querySelector('.ossia') !== null");
        assertNoViolations();
        cube.link(LinkStatus.State.WAITING_FOR_SERVICE, "");
        await("not listening", "return document.querySelector('h1').textContent === 'Not listening'");
        assertNoViolations();
    }

    @Test
    void shouldNeverScrollSidewaysWhenTheWindowIsAsNarrowAsWcagAsks() {
        openNow(320, 640, "light");
        cube.turn("D2 F' R", 300);
        await("mending", "return document.querySelector('.ossia') !== null");

        assertThat(browser.pixelsToScrollSideways()).isZero();
    }

    private void openNow(int width, int height, String scheme) {
        browser.as(width, height, scheme, "reduce").open(server.url() + "/now", ".lines .note");
    }

    private static void assertNoViolations() {
        Results results = new AxeBuilder()
                .withTags(List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"))
                .analyze(browser.driver());
        assertThat(results.getViolations().stream()
                        .map(rule ->
                                rule.getId() + " at " + rule.getNodes().get(0).getHtml()))
                .isEmpty();
    }

    private static String inverse(String words) {
        List<String> turns = new ArrayList<>(List.of(words.split(" ")));
        Collections.reverse(turns);
        return String.join(
                " ",
                HandDriven.turns(String.join(" ", turns)).stream()
                        .map(turn -> turn.inverse().toString())
                        .toList());
    }

    private static String nextWord() {
        return browser.one(".word.now").getText();
    }

    private static void awaitNext(String word) {
        await(
                "the cursor never came to " + word,
                "return document.querySelector('.word.now')?.textContent === \"" + word + "\"");
    }

    private static void awaitTask(String words) {
        await("never said " + words, "return document.querySelector('.task').textContent.startsWith('" + words + "')");
    }

    private static void await(String what, String script) {
        browser.waitUntil(what, script);
    }
}
