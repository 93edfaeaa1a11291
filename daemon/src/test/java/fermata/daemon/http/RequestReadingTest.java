package fermata.daemon.http;

import static org.assertj.core.api.Assertions.assertThat;

import io.undertow.server.HttpServerExchange;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What counts as a request, after RFC 9112, asked from outside. */
@Timeout(60)
class RequestReadingTest {
    private static final String NEXT = "GET /next HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n";

    private static HttpPort port;
    private static Callers callers;

    @BeforeAll
    static void open() throws IOException {
        Limits wide = new Limits(100, 100);
        port = new HttpPort(
                new InetSocketAddress(InetAddress.getByName("127.0.0.1"), 0), wide, wide, RequestReadingTest::answer);
        callers = new Callers(port.port());
    }

    @AfterAll
    static void close() throws IOException {
        callers.close();
        port.close();
    }

    /** Says what was understood. */
    private static void answer(HttpServerExchange exchange) {
        String told = exchange.getRequestMethod() + " " + exchange.getRequestPath() + " ? " + exchange.getQueryString()
                + " X=" + exchange.getRequestHeaders().getFirst("X") + " Cookie="
                + exchange.getRequestHeaders().getFirst("Cookie") + " body=" + HttpPort.hasBody(exchange) + "\n";
        HttpPort.answer(exchange, 200, told.getBytes(StandardCharsets.UTF_8));
    }

    @Test
    void shouldReadWhatABrowserAsks() throws Exception {
        assertThat(answers("GET /solves/a%2Db+c?turn=3&x=%20 HTTP/1.1\r\nHost: board:8737\r\n"
                        + "COOKIE:  a=1 \r\ncookie: b=2\r\n\r\n" + NEXT))
                .contains("GET /solves/a-b+c ? turn=3&x=%20 X=null Cookie=a=1; b=2 body=false\n")
                .contains("GET /next");
    }

    /** Nothing is answered but a refusal, and what follows is not read: it might be a part of it. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "GET",
                "GET /",
                "GET  / HTTP/1.1",
                "GET nights HTTP/1.1",
                "GET http://elsewhere.example/ HTTP/1.1",
                "GET /a#b HTTP/1.1",
                "GET /\u0007 HTTP/1.1",
                "GET /\u00e9 HTTP/1.1",
                "GET /%zz HTTP/1.1",
                "GET / HTTP/2.0",
                "GET / HTTP/1.1 ",
                "GET / HTTP/1.1\r\nno colon",
                "GET / HTTP/1.1\r\n: no name",
                "GET / HTTP/1.1\r\nX : spaced",
                "GET / HTTP/1.1\r\nX: \u0000",
                "GET / HTTP/1.1\r\nX: a\rX: b",
                "GET / HTTP/1.1\nX: bare line feed",
                "GET / HTTP/1.1\r\nX: a\nX: bare line feed",
                "GET / HTTP/1.1\r\nHost: two",
                "POST / HTTP/1.1\r\nContent-Length: 3\r\nContent-Length: 4",
                "POST / HTTP/1.1\r\nContent-Length: 3\r\nContent-Length: 3",
                "POST / HTTP/1.1\r\nContent-Length: 3, 3",
                "POST / HTTP/1.1\r\nContent-Length: +3",
                "POST / HTTP/1.1\r\nContent-Length: -3",
                "POST / HTTP/1.1\r\nContent-Length: 4\r\n 4",
                "POST / HTTP/1.1\r\nContent-Length: 3\r\nTransfer-Encoding: chunked",
                "POST / HTTP/1.1\r\nTransfer-Encoding: chunked\r\nTransfer-Encoding: identity",
                "PRI * HTTP/2.0"
            })
    void shouldRefuseWhatCouldBeReadInTwoWays(String head) throws Exception {
        String answers = answers(head + "\r\nHost: here\r\n\r\n" + NEXT);

        assertThat(answers).doesNotContain(" 200 ", "next").matches("(?s)|HTTP/1.1 400 .*Connection: close\r\n.*");
    }

    /** RFC 9112, 5.2, lets a server read it as a space, and nothing else. */
    @Test
    void shouldReadAFoldedFieldInOneWay() throws Exception {
        assertThat(answers("GET / HTTP/1.1\r\nHost: here\r\nX: a\r\n Content-Length: 44\r\n\r\n" + NEXT))
                .contains("X=a Content-Length: 44 ", "body=false")
                .contains("GET /next");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Content-Length: 63",
                "Content-Length:\r\n 63",
                "Transfer-Encoding: chunked",
                "Transfer-Encoding:\r\n chunked",
                "Transfer-Encoding: gzip, chunked",
                "Transfer-Encoding: xchunked"
            })
    void shouldNotTakeABodyForTheNextRequest(String length) throws Exception {
        for (String method : new String[] {"GET", "POST", "DELETE"}) {
            String answers = answers(method + " /who HTTP/1.1\r\nHost: here\r\n" + length + "\r\n\r\n" + NEXT);

            assertThat(answers).contains("Connection: close").doesNotContain("next");
            assertThat(answers.split("HTTP/1.1 ")).hasSize(2);
        }
    }

    @Test
    void shouldRefuseAHeadThatIsTooLong() throws Exception {
        String most = "GET / HTTP/1.1\r\nHost: here\r\nConnection: close\r\nX: ";
        int room = HttpPort.LONGEST_HEAD_BYTES - most.length() - 4;

        assertThat(answers(most + "x".repeat(room) + "\r\n\r\n")).contains(" 200 ");
        assertThat(answers(most + "x".repeat(room + 1) + "\r\n\r\n")).doesNotContain(" 200 ");
        assertThat(answers("GET /" + "x".repeat(HttpPort.LONGEST_HEAD_BYTES))).doesNotContain(" 200 ");
    }

    @Test
    void shouldRefuseMoreFieldsThanABrowserSends() throws Exception {
        String most = "GET / HTTP/1.1\r\nHost: here\r\nConnection: close" + "\r\nX: 1".repeat(HttpPort.MOST_FIELDS - 2);

        assertThat(answers(most + "\r\n\r\n")).contains(" 200 ");
        assertThat(answers(most + "\r\nX: 1\r\n\r\n")).doesNotContain(" 200 ");
    }

    private static String answers(String words) throws IOException {
        return callers.answers("127.0.0.2", words);
    }
}
