package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.selenium.AxeBuilder;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.live.HandDriven;
import fermata.daemon.live.TellingJournal;
import fermata.daemon.pairing.PairingDesk;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.decoder.stream.OpenLayout;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Cookie;
import org.openqa.selenium.Keys;

/** Who may read what when the pages are served to the network. */
@Timeout(120)
class PairingBrowserTest {
    @TempDir
    private Path home;

    private Store store;
    private HandDriven cube;
    private PairingDesk desk;
    private PageServer server;

    @BeforeEach
    void open() {
        Origin cook = new Origin("galley cube", "cook", Hand.LEFT);
        store = Store.openForWriting(new Home(home), () -> LocalDateTime.of(2026, 11, 24, 20, 0));
        CaptureStart start = new CaptureStart(
                UUID.randomUUID(), "boot", Instant.EPOCH, System.nanoTime(), ZoneOffset.UTC, cook, "radio");
        long id = store.captures().begin(start, OpenLayout.profileText(), "").captureId();
        cube = new HandDriven(TellingJournal.of(store.captures(), id), "R U F");
        desk = new PairingDesk(home, cube.clock(), Clock.fixed(Instant.EPOCH, ZoneOffset.UTC));
        cube.board.hearTurns(desk);
        server = PageServer.start(
                RehearsedPractice.empty(), cube.board, new Audience(Optional.of(desk), Set.of("galley.local")), 0);
    }

    @AfterEach
    void close() {
        server.close();
        cube.close();
        store.close();
    }

    @ParameterizedTest
    @CsvSource({"390, dark", "1280, light"})
    void shouldPairABrowserByTheCubeAndShutItOutAgainWhenItIsRevoked(int width, String scheme) {
        String address = "http://galley.local:" + server.port();
        try (Browser browser = new Browser()) {
            browser.as(width, 844, scheme, "reduce").open(address + "/now", "button.open");
            assertThat(browser.one("h1").getText()).isEqualTo("Pair this browser");
            browser.tabTo("button.open");
            browser.press(Keys.ENTER);
            browser.waitFor(".lines .word");
            assertThat(new AxeBuilder().analyze(browser.driver()).getViolations())
                    .isEmpty();
            cube.turn("R2", 300);
            browser.waitUntil("the failure", "return document.body.textContent.includes('Nothing was paired')");
            browser.one("button.open").click();
            browser.waitUntil("the wait", "return document.body.textContent.includes('Try again in')");
            browser.waitUntil(
                    "the next attempt",
                    "document.querySelector('button.open')?.click();"
                            + "return document.querySelector('.lines .word') !== null");
            words(browser).forEach(turn -> cube.turn(turn, 300));
            browser.waitFor("h1.status");

            Cookie cookie = browser.driver().manage().getCookieNamed("fermata");
            assertThat(cookie.isHttpOnly()).isTrue();
            assertThat(cookie.getSameSite()).isEqualTo("Strict");
            browser.waitUntil("live", "return document.querySelector('h1').textContent === 'Listening'");
            desk.browsers().revoke(desk.browsers().list().get(0).id());
            browser.open(address + "/", "button.open");
            assertThat(browser.requests()).allMatch(asked -> asked.startsWith(address + "/"));
            assertThat(browser.complaints()).allMatch(complaint -> complaint.contains("401"));
        }
    }

    @SuppressWarnings("unchecked")
    private static List<String> words(Browser browser) {
        return (List<String>) browser.driver()
                .executeScript("return [...document.querySelectorAll('.lines .word')].map((word) => word.textContent)");
    }

    @Test
    void shouldTellAStrangerNothingAndAskThisMachineForNoPairing() throws Exception {
        String network = "galley.local:" + server.port();
        String here = "127.0.0.1:" + server.port();

        assertThat(ask("GET /api/solves", network)).startsWith("HTTP/1.1 401");
        assertThat(ask("GET /api/live", network)).startsWith("HTTP/1.1 401");
        assertThat(ask("GET /solves/1-0", network)).startsWith("HTTP/1.1 200").contains("Pair this browser");
        assertThat(ask("GET /site/page/tokens.css", network)).startsWith("HTTP/1.1 200");
        assertThat(ask("GET /api/solves", network, "Cookie: fermata=" + "0".repeat(64)))
                .startsWith("HTTP/1.1 401");
        assertThat(ask("GET /api/solves", "rebound.example:" + server.port())).startsWith("HTTP/1.1 421");
        assertThat(ask("GET /api/solves", "192.0.2.7:" + server.port())).startsWith("HTTP/1.1 421");
        assertThat(ask("GET /api/solves", here)).startsWith("HTTP/1.1 200");
    }

    @Test
    void shouldSayThatTheListOfPairingsIsDamagedWhateverIsAsked() throws Exception {
        Files.writeString(home.resolve("paired.json"), "{");
        String network = "galley.local:" + server.port();
        String cookie = "Cookie: fermata=" + "0".repeat(64);

        assertThat(ask("GET /api/solves", network, cookie))
                .startsWith("HTTP/1.1 503")
                .contains("its own log says why")
                .doesNotContain("paired.json")
                .doesNotContain(home.toString());
        assertThat(ask("GET /api/live", network, cookie))
                .startsWith("HTTP/1.1 503")
                .contains("its own log says why")
                .doesNotContain("paired.json")
                .doesNotContain(home.toString());
    }

    @Test
    void shouldChangeNothingForWhoDoesNotComeFromAPageOfItsOwn() throws Exception {
        String here = "127.0.0.1:" + server.port();
        String session = ask("GET /api/session", here);
        String token = "X-Fermata-Token: " + session.replaceAll("(?s).*\"token\":\"([0-9a-f]+)\".*", "$1");

        assertThat(ask("POST /api/now/next", here)).startsWith("HTTP/1.1 403");
        assertThat(ask("POST /api/now/next", here, token, "Origin: http://evil.example"))
                .startsWith("HTTP/1.1 403");
        // The bodies do come: a newer JDK answers only once it has seen what was promised.
        assertThat(ask("POST /api/now/next", here, token, "Content-Length: 5", "", "hello"))
                .startsWith("HTTP/1.1 413");
        assertThat(ask("POST /api/now/next", here, token, "Transfer-Encoding: chunked", "", "5", "hello", "0", ""))
                .startsWith("HTTP/1.1 413");
        assertThat(ask("GET /api/now/next", here, token)).startsWith("HTTP/1.1 404");
        assertThat(ask("POST /api/now/next", "galley.local:" + server.port(), token))
                .startsWith("HTTP/1.1 403");
        assertThat(ask("POST /api/now/next", here, token, "Origin: http://" + here))
                .startsWith("HTTP/1.1 200");
    }

    @Test
    void shouldNotLetAStrangerWhoHasItsTokenChangeAnything() throws Exception {
        String network = "galley.local:" + server.port();
        String session = ask("GET /api/session", network);
        String token = "X-Fermata-Token: " + session.replaceAll("(?s).*\"token\":\"([0-9a-f]+)\".*", "$1");

        assertThat(ask("POST /api/now/solved", network, token)).startsWith("HTTP/1.1 401");
        assertThat(ask("POST /api/pair", network, token)).contains("\"step\":\"begun\"");
        assertThat(ask("POST /api/pair/claim", network, token)).contains("\"step\":\"failed\"");
    }

    private String ask(String line, String host, String... headers) throws Exception {
        try (Socket socket = new Socket("127.0.0.1", server.port())) {
            socket.setSoTimeout(10_000);
            String request = line + " HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n"
                    + String.join(
                            "",
                            List.of(headers).stream()
                                    .map(header -> header + "\r\n")
                                    .toList()) + "\r\n";
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            StringBuilder answer = new StringBuilder();
            while (!isWhole(answer.toString())) {
                int next = socket.getInputStream().read();
                assertThat(next).as("the connection ended after %s", answer).isNotNegative();
                answer.append((char) next);
            }
            return answer.toString();
        }
    }

    private static boolean isWhole(String answer) {
        int body = answer.indexOf("\r\n\r\n") + 4;
        Matcher length = Pattern.compile("(?i)\r\ncontent-length: (\\d+)").matcher(answer);
        return body > 3 && answer.length() - body >= (length.find() ? Integer.parseInt(length.group(1)) : 0);
    }
}
