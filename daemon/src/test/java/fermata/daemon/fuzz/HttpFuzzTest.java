package fermata.daemon.fuzz;

import fermata.daemon.practice.Practice;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.web.PageServer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Spoiled requests over real sockets to the real server and a real store: each is answered as the pages do, refused
 * with a 4xx, or hung up on. Never a 5xx, and never silence once the client said that it is done.
 */
class HttpFuzzTest {
    private static final int PATIENCE_MILLIS = 60_000;
    /** The client allocates what it hears; the largest page is far below. */
    private static final long MOST_BYTES = 1_000_000;

    private static final Pattern STATUS = Pattern.compile("HTTP/1\\.[01] (\\d{3}) ");
    private static final String END = "\r\nHost: 127.0.0.1:%d\r\nConnection: close\r\n\r\n";
    private static final List<String> WORDS = List.of(
            "\r\n",
            "\n",
            "\r",
            "\u0000",
            "%00",
            "%2e%2e%2f",
            "%",
            "%zz",
            "..",
            "//",
            "?",
            "&",
            "=",
            "#",
            "HTTP/1.0",
            "HTTP/2.0",
            "Transfer-Encoding: chunked\r\n",
            "Content-Length: 5\r\n",
            "Content-Length: -1\r\n",
            "Content-Length: 99999999999999999999\r\n",
            "Host: evil.example\r\n",
            "Expect: 100-continue\r\n",
            "Upgrade: h2c\r\nConnection: Upgrade, HTTP2-Settings\r\nHTTP2-Settings: AAMAAABkAAQAAP__\r\n",
            "Range: bytes=0-1\r\n",
            "If-None-Match: *\r\n",
            "Accept-Encoding: gzip\r\n",
            "Cookie: fermata=0\r\n",
            "over=all",
            "day=2026-13-45",
            "day=+999999999-12-31",
            "turn=99999",
            "PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n",
            "\u00e9",
            " ",
            "\t",
            "/api/",
            "/site/",
            "/solves/",
            ";a=b",
            "http://evil.example/",
            "X: " + "y".repeat(9_000) + "\r\n");

    @TempDir
    Path home;

    private Store store;
    private PageServer server;

    @BeforeEach
    void serve() {
        store = Store.openForWriting(new Home(home), () -> LocalDateTime.of(2026, 11, 24, 20, 0));
        server = PageServer.start(new Practice(store), 0);
    }

    @AfterEach
    void close() {
        server.close();
        store.close();
    }

    private Mutations requests() {
        return new Mutations(
                Mutations.texts(List.of(
                        request("GET /api/nights HTTP/1.1"),
                        request("GET /api/nights/2026-11-24?over=week HTTP/1.1"),
                        request("GET /api/solves?day=2026-11-24 HTTP/1.1"),
                        request("GET /api/solves/1-0/setup?turn=3 HTTP/1.1"),
                        request("HEAD /kept/1-0.html HTTP/1.1\r\nAccept-Encoding: gzip, br"),
                        request("GET /site/tokens.css HTTP/1.1\r\nIf-None-Match: \"abc\""),
                        request("GET /api/cases?over=all HTTP/1.1\r\nCookie: a=b; fermata=" + "0".repeat(64)),
                        request("GET /api/session HTTP/1.1\r\nUser-Agent: a browser"),
                        request("POST /api/now/next HTTP/1.1\r\nX-Fermata-Token: 00\r\nContent-Length: 2") + "{}",
                        request("POST /api/pair HTTP/1.1\r\nOrigin: http://127.0.0.1\r\nTransfer-Encoding: chunked")
                                + "2\r\n{}\r\n0\r\n\r\n")),
                WORDS);
    }

    private String request(String line) {
        return line + String.format(java.util.Locale.ROOT, END, server.port());
    }

    private int read(byte[] input, SplittableRandom random) throws IOException {
        String answer;
        try (Socket socket = new Socket("127.0.0.1", server.port())) {
            socket.setSoTimeout(PATIENCE_MILLIS);
            // Hanging up hard leaves no connection behind that the machine must remember.
            socket.setSoLinger(true, 0);
            answer = answer(socket, input);
        }
        Matcher status = STATUS.matcher(answer);
        while (status.find()) {
            if (status.group(1).startsWith("5")) {
                throw new AssertionError(answer);
            }
        }
        return 1;
    }

    private static String answer(Socket socket, byte[] input) throws IOException {
        ByteArrayOutputStream heard = new ByteArrayOutputStream();
        try {
            socket.getOutputStream().write(input);
            socket.shutdownOutput();
            InputStream in = socket.getInputStream();
            byte[] some = new byte[8_192];
            for (int count = in.read(some); count >= 0 && heard.size() < 65_536; count = in.read(some)) {
                heard.write(some, 0, count);
            }
        } catch (SocketTimeoutException silence) {
            throw new AssertionError("no answer and no end within " + PATIENCE_MILLIS + " ms", silence);
        } catch (SocketException hungUp) {
            return heard.toString(StandardCharsets.ISO_8859_1);
        }
        return heard.toString(StandardCharsets.ISO_8859_1);
    }

    @Test
    void shouldRefuseWhenRequestsAreSpoiled() {
        Fuzzing.shortly("requests", 300, requests(), MOST_BYTES, this::read);
    }

    @Test
    @Tag("fuzz")
    void shouldRefuseHoweverLongRequestsAreSpoiled() {
        Fuzzing.at("requests", 2, requests(), MOST_BYTES, this::read);
    }
}
