package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.json.Over;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** Pages kept as one file, opened from the disk while the network is off. */
class OneFileTest {
    private static final String ID = "2026-11-24-2";
    private static final RehearsedPractice PRACTICE = RehearsedPractice.threeNights();

    private static Browser browser;

    @TempDir
    private Path folder;

    @BeforeAll
    static void open() {
        browser = new Browser().as(1280, 800, "light", "no-preference");
        browser.driver().executeCdpCommand("Network.enable", Map.of());
        browser.driver()
                .executeCdpCommand(
                        "Network.emulateNetworkConditions",
                        Map.of("offline", true, "latency", 0, "downloadThroughput", 0, "uploadThroughput", 0));
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @Test
    void shouldPlayAScoreFromTheDiskWithTheNetworkOff() throws Exception {
        openFile(OneFile.score(ID, PRACTICE.solveJson(ID).orElseThrow()), "#staves .note");

        browser.tabTo("#staves");
        browser.press(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.SPACE);
        browser.waitUntil(
                "playing never moved the cursor", "return Number(document.querySelector('#staves').dataset.turn) > 3");

        assertThat(browser.all("a[href^='/']")).isEmpty();
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests()).isEmpty();
    }

    @Test
    void shouldShowANightFromTheDiskWithTheNetworkOff() throws Exception {
        LocalDate day = LocalDate.of(2026, 11, 24);
        Map<String, String> documents = Map.of(
                "/api/nights",
                PRACTICE.nightsJson(),
                "/api/nights/" + day,
                PRACTICE.nightJson(day, Over.NIGHT).orElseThrow(),
                "/api/solves?day=" + day,
                PRACTICE.solvesJson(day));

        openFile(OneFile.page("night/night.html", "/nights/" + day, documents), ".times .head");

        assertThat(browser.one("h1").getText()).contains("24 November 2026");
        assertThat(browser.complaints()).isEmpty();
        assertThat(browser.requests()).isEmpty();
    }

    @Test
    void shouldKeepWordsOfTheSolveFromBecomingMarkup() throws Exception {
        Map<String, Object> odd = PRACTICE.copy(ID, "odd");
        odd.put("scramble", "</script><script>document.title = 'slipped in'</script>");
        PRACTICE.add(odd);

        openFile(OneFile.score("odd", PRACTICE.solveJson("odd").orElseThrow()), "#staves .note");

        assertThat(browser.driver().getTitle()).doesNotContain("slipped");
        assertThat(browser.one(".scramble").getText()).contains("</script>");
    }

    private void openFile(String html, String awaited) throws Exception {
        Path file = Files.writeString(folder.resolve("kept.html"), html);
        browser.open(file.toUri().toString(), awaited);
    }
}
