package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.daemon.json.Over;
import fermata.daemon.json.PracticeReader;
import fermata.daemon.store.StoreException;
import fermata.daemon.store.StoreFault;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.Socket;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PageServerTest {
    private static final RehearsedPractice PRACTICE =
            RehearsedPractice.empty().rehearse("2026-11-24", 2, 11).rehearse("2026-11-23", 1, 12);

    private static PageServer server;

    private final HttpClient client = HttpClient.newHttpClient();

    @BeforeAll
    static void serve() {
        server = PageServer.start(PRACTICE, 0);
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    @Test
    void shouldAnswerExactlyWhatTheReaderSaysWhenAskedForJson() throws Exception {
        assertThat(get("/api/nights").body()).isEqualTo(PRACTICE.nightsJson());
        assertThat(get("/api/nights/2026-11-24").body())
                .isEqualTo(PRACTICE.nightJson(LocalDate.of(2026, 11, 24), Over.NIGHT)
                        .orElseThrow());
        assertThat(get("/api/nights/2026-11-24?over=week").body())
                .isEqualTo(PRACTICE.nightJson(LocalDate.of(2026, 11, 24), Over.WEEK)
                        .orElseThrow());
        assertThat(get("/api/cases").body()).isEqualTo(PRACTICE.casesJson(Over.ALL));
        assertThat(get("/api/cases?over=night").body()).isEqualTo(PRACTICE.casesJson(Over.NIGHT));
        assertThat(get("/api/solves").body()).isEqualTo(PRACTICE.solvesJson());
        assertThat(get("/api/solves?day=2026-11-23").body()).isEqualTo(PRACTICE.solvesJson(LocalDate.of(2026, 11, 23)));
        assertThat(get("/api/solves/2026-11-24-1").body())
                .isEqualTo(PRACTICE.solveJson("2026-11-24-1").orElseThrow());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/",
                "/nights",
                "/nights/2026-11-24",
                "/cases",
                "/solves/any-id",
                "/site/score/score.mjs",
                "/api/nights",
                "/nothing"
            })
    void shouldSendItsSafetyHeadersWhateverTheAddress(String path) throws Exception {
        HttpResponse<String> response = get(path);

        assertThat(response.headers().firstValue("Content-Security-Policy").orElseThrow())
                .startsWith("default-src 'self';");
        assertThat(response.headers().firstValue("Content-Security-Policy").orElseThrow())
                .doesNotContain("unsafe");
        assertThat(response.headers().firstValue("X-Content-Type-Options")).contains("nosniff");
        assertThat(response.headers().firstValue("Referrer-Policy")).contains("no-referrer");
    }

    @Test
    void shouldBeginWithTheLatestNightWhenNothingIsListenedTo() throws Exception {
        assertThat(get("/").body())
                .isEqualTo(get("/nights").body())
                .isNotEqualTo(get("/now").body());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/site/../fermata.db",
                "/site/%2e%2e/%2e%2e/etc/passwd",
                "/site/",
                "/site",
                "/site/score",
                "/site/score/",
                "/site/layout.mjs",
                "/site/score/../page/tokens.css",
                "/site/score/%2e%2e/page/tokens.css",
                "/site/score/..%2f..%2fSiteFiles.class",
                "/site/SiteFiles.class",
                "/site//score/layout.mjs",
                "/site/./score/layout.mjs",
                "/site/page/missing.html",
                "/solves/..%2f..%2fetc",
                "/solves/",
                "/nights/2026-02-31",
                "/api"
            })
    void shouldFindNothingWhenThePathClimbsListsOrInvents(String path) throws Exception {
        assertThat(get(path).statusCode()).isEqualTo(404);
    }

    @ParameterizedTest
    @ValueSource(strings = {"/api/nights/2001-01-01", "/api/nights/yesterday", "/api/solves/none", "/api/nothing"})
    void shouldSayWhatIsMissingAsJsonWhenAskedForDataThatIsNotThere(String path) throws Exception {
        HttpResponse<String> response = get(path);

        assertThat(response.statusCode()).isEqualTo(404);
        assertThat(response.body()).startsWith("{\"error\":\"");
    }

    @ParameterizedTest
    @CsvSource({
        "/api/nights/2026-11-24?over=month, 400",
        "/api/cases?day=2026-11-24, 400",
        "/api/solves/2026-11-24-1/setup, 400",
        "/api/solves/2026-11-24-1/setup?turn=-1, 400",
        "/api/solves/2026-11-24-1/setup?turn=99999, 400",
        "/api/solves/none/setup?turn=3, 404",
        "/kept/none.html, 404"
    })
    void shouldRefuseAPositionOrAPageThatIsNotThere(String path, int status) throws Exception {
        assertThat(get(path).statusCode()).isEqualTo(status);
    }

    @Test
    void shouldGiveASolvesPageAsAFileToBeSaved() throws Exception {
        HttpResponse<String> response = get("/kept/2026-11-24-1.html");

        assertThat(response.headers().firstValue("Content-Disposition")).contains("attachment");
        assertThat(response.body())
                .isEqualTo(OneFile.score(
                        "2026-11-24-1", PRACTICE.solveJson("2026-11-24-1").orElseThrow()));
        assertThat(response.body()).doesNotContain("src=", "href=\"/");
    }

    @Test
    void shouldTellTheBrowserAtOnceWhatTheScoreWillAskFor() throws Exception {
        assertThat(get("/solves/2026-11-24-1").headers().firstValue("Link"))
                .contains("</api/solves/2026-11-24-1>; rel=preload; as=fetch; crossorigin");
        assertThat(get("/").headers().firstValue("Link")).isEmpty();
    }

    @Test
    void shouldNameTheExpectedFormWhenTheQueryIsNoDay() throws Exception {
        HttpResponse<String> response = get("/api/solves?day=2026-13-01");

        assertThat(response.statusCode()).isEqualTo(400);
        assertThat(response.body()).contains("day=YYYY-MM-DD");
    }

    @ParameterizedTest
    @ValueSource(strings = {"POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE"})
    void shouldRefuseWhenTheMethodWrites(String method) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create(server.url() + "/api/nights"))
                .method(method, HttpRequest.BodyPublishers.ofString("{}"))
                .build();
        HttpResponse<String> response = client.send(request, HttpResponse.BodyHandlers.ofString());

        assertThat(response.statusCode()).isEqualTo(405);
        assertThat(response.headers().firstValue("Allow")).contains("GET, HEAD");
    }

    @Test
    void shouldRefuseWhenAnotherNameWasBentToThisMachine() throws Exception {
        assertThat(raw("GET /api/nights HTTP/1.1\r\nHost: rebound.example:" + server.port() + "\r\n\r\n"))
                .startsWith("HTTP/1.1 421");
        assertThat(raw("GET /api/nights HTTP/1.0\r\n\r\n")).startsWith("HTTP/1.0 421");
        assertThat(raw("GET /api/nights HTTP/1.1\r\nHost: LOCALHOST:" + server.port() + "\r\n\r\n"))
                .startsWith("HTTP/1.1 200");
    }

    @Test
    void shouldCompressAndAnswerNotModifiedWhenTheBrowserAllowsAndKnows() throws Exception {
        URI address = URI.create(server.url() + "/site/score/layout.mjs");
        HttpResponse<byte[]> packed = client.send(
                HttpRequest.newBuilder(address)
                        .header("Accept-Encoding", "gzip")
                        .build(),
                HttpResponse.BodyHandlers.ofByteArray());
        byte[] unpacked = new GZIPInputStream(new ByteArrayInputStream(packed.body())).readAllBytes();
        String tag = packed.headers().firstValue("ETag").orElseThrow();
        HttpResponse<String> again = client.send(
                HttpRequest.newBuilder(address).header("If-None-Match", tag).build(),
                HttpResponse.BodyHandlers.ofString());

        assertThat(new String(unpacked, StandardCharsets.UTF_8))
                .isEqualTo(get("/site/score/layout.mjs").body());
        assertThat(again.statusCode()).isEqualTo(304);
        assertThat(again.body()).isEmpty();
    }

    @Test
    void shouldSendTheHeadOnlyWhenAskedForTheHead() throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create(server.url() + "/"))
                .method("HEAD", HttpRequest.BodyPublishers.noBody())
                .build();
        HttpResponse<String> response = client.send(request, HttpResponse.BodyHandlers.ofString());

        assertThat(response.statusCode()).isEqualTo(200);
        assertThat(response.body()).isEmpty();
        assertThat(response.headers().firstValueAsLong("Content-Length").orElse(0))
                .isPositive();
    }

    @Test
    void shouldSayWhatToDoWhenThePortIsTaken() {
        assertThatThrownBy(() -> PageServer.start(PRACTICE, server.port()))
                .isInstanceOf(PageServerException.class)
                .hasMessageContaining("on port " + server.port() + ":")
                .hasMessageContaining("choose another port");
    }

    @Test
    void shouldTellThePageWhyWhenThePracticeCannotBeRead() throws Exception {
        try (PageServer broken =
                PageServer.start(new BrokenPractice(new IllegalStateException("the \"disk\" is gone")), 0)) {
            HttpResponse<String> response = client.send(
                    HttpRequest.newBuilder(URI.create(broken.url() + "/api/nights"))
                            .build(),
                    HttpResponse.BodyHandlers.ofString());

            assertThat(response.statusCode()).isEqualTo(500);
            assertThat(response.body()).isEqualTo("{\"error\":\"cannot read the practice: the \\\"disk\\\" is gone\"}");
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = StoreFault.class,
            names = {"DAMAGED", "DISK_FAILING", "READ_ONLY"})
    void shouldSayWhatToDoWhenTheStoreCannotBeReadNow(StoreFault fault) throws Exception {
        StoreException failure = new StoreException(fault, "practice.db is damaged; fermata recover helps", null);
        try (PageServer broken = PageServer.start(new BrokenPractice(failure), 0)) {
            HttpResponse<String> response = client.send(
                    HttpRequest.newBuilder(URI.create(broken.url() + "/api/nights"))
                            .build(),
                    HttpResponse.BodyHandlers.ofString());

            assertThat(response.statusCode()).isEqualTo(503);
            assertThat(response.body()).isEqualTo("{\"error\":\"practice.db is damaged; fermata recover helps\"}");
        }
    }

    @Test
    void shouldNameEveryPageFileInTheJar() throws IOException, URISyntaxException {
        Path folder = Path.of(PageServer.class.getResource("page/tokens.css").toURI())
                .getParent()
                .getParent();
        try (Stream<Path> files = Files.walk(folder)) {
            List<String> names = files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file).toString())
                    .filter(name -> !name.endsWith(".class"))
                    .toList();

            assertThat(SiteFiles.NAMES).containsExactlyInAnyOrderElementsOf(names);
        }
    }

    @Test
    void shouldStayWithinTheBudgetOfAFirstLoad() {
        SiteFiles files = new SiteFiles();
        int bytes = SiteFiles.NAMES.stream()
                .mapToInt(name -> files.file(name).orElseThrow().gzipped().length)
                .sum();

        // The pages' own budget: every file of every page together, compressed, in under 250 KB.
        assertThat(bytes).isLessThan(250_000);
    }

    private HttpResponse<String> get(String path) throws Exception {
        return client.send(
                HttpRequest.newBuilder(URI.create(server.url() + path)).build(), HttpResponse.BodyHandlers.ofString());
    }

    private static String raw(String request) throws IOException {
        try (Socket socket = new Socket("127.0.0.1", server.port())) {
            socket.setSoTimeout(5000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            byte[] start = socket.getInputStream().readNBytes(12);
            return new String(start, StandardCharsets.US_ASCII);
        }
    }

    private record BrokenPractice(RuntimeException failure) implements PracticeReader {
        @Override
        public String nightsJson() {
            throw failure;
        }

        @Override
        public Optional<String> nightJson(LocalDate day, Over over) {
            return Optional.empty();
        }

        @Override
        public String casesJson(Over over) {
            return "{}";
        }

        @Override
        public String solvesJson() {
            return "{}";
        }

        @Override
        public String solvesJson(LocalDate day) {
            return "{}";
        }

        @Override
        public Optional<String> solveJson(String id) {
            return Optional.empty();
        }
    }
}
