package fermata.daemon.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Examples after RFC 9112. */
class RequestHeadTest {
    @Test
    void shouldReadWhatABrowserAsks() throws Exception {
        RequestHead head = RequestHead.parse(
                "GET /solves/a%2Db+c?turn=3&x=%20 HTTP/1.1\r\nHost: board:8737\r\n" + "COOKIE:  a=1 \r\ncookie: b=2");

        assertThat(head.method()).isEqualTo("GET");
        assertThat(head.path()).isEqualTo("/solves/a-b+c");
        assertThat(head.query()).isEqualTo("turn=3&x=%20");
        assertThat(head.field("host")).contains("board:8737");
        assertThat(head.all("Cookie")).containsExactly("a=1", "b=2");
        assertThat(head.hasBody()).isFalse();
        assertThat(head.keepsConnection()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "HTTP/1.1, keep-alive, true",
        "HTTP/1.1, Close, false",
        "HTTP/1.0, keep-alive, false",
        "HTTP/1.0, x, false"
    })
    void shouldKnowWhetherTheConnectionIsUsedAgain(String version, String wish, boolean keeps) throws Exception {
        assertThat(RequestHead.parse("GET / " + version + "\r\nConnection: " + wish)
                        .keepsConnection())
                .isEqualTo(keeps);
    }

    @Test
    void shouldKnowThatABodyIsPromised() throws Exception {
        assertThat(RequestHead.parse("POST / HTTP/1.1\r\nContent-Length: 0").hasBody())
                .isFalse();
        assertThat(RequestHead.parse("POST / HTTP/1.1\r\nContent-Length: 7").hasBody())
                .isTrue();
        assertThat(RequestHead.parse("POST / HTTP/1.1\r\nTransfer-Encoding: chunked")
                        .hasBody())
                .isTrue();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "GET",
                "GET /",
                "GET  / HTTP/1.1",
                "get / HTTP/1.1",
                "GET nights HTTP/1.1",
                "GET http://elsewhere.example/ HTTP/1.1",
                "OPTIONS * HTTP/1.1",
                "GET /a#b HTTP/1.1",
                "GET /\u0007 HTTP/1.1",
                "GET /%zz HTTP/1.1",
                "GET / HTTP/2.0",
                "GET / HTTP/1.1 ",
                "GET / HTTP/1.1\r\nno colon",
                "GET / HTTP/1.1\r\n: no name",
                "GET / HTTP/1.1\r\nHost : spaced",
                "GET / HTTP/1.1\r\nX: a\r\n folded: on",
                "GET / HTTP/1.1\r\nHost: one\r\nHost: two",
                "POST / HTTP/1.1\r\nContent-Length: 3\r\nContent-Length: 4",
                "GET / HTTP/1.1\nHost: bare line feed"
            })
    void shouldRefuseWhatCouldBeReadInTwoWays(String text) {
        assertThatThrownBy(() -> RequestHead.parse(text)).isInstanceOf(BadRequest.class);
    }

    @Test
    void shouldRefuseMoreFieldsThanABrowserSends() {
        assertThatThrownBy(() -> RequestHead.parse("GET / HTTP/1.1" + "\r\nX: 1".repeat(101)))
                .isInstanceOf(BadRequest.class)
                .hasMessageContaining("at most 100");
    }
}
