package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Clients that send half of what they should, or far too much: they harm themselves only. */
@Timeout(60)
class RudeClientsTest {
    private static final int FAR_TOO_MUCH = 64 << 20;

    private static PageServer server;

    private final List<Socket> sockets = new ArrayList<>();

    @BeforeAll
    static void serve() {
        server = PageServer.start(RehearsedPractice.empty().rehearse("2026-11-24", 1, 1), 0);
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    @AfterEach
    void hangUp() throws IOException {
        for (Socket socket : sockets) {
            socket.close();
        }
    }

    @Test
    void shouldServeOthersAtOnceWhenSomeSendHalfARequest() throws Exception {
        for (int client = 0; client < 12; client++) {
            say("GET /api/nights HTTP/1.1\r\nHost: 127.0.0.1");
        }

        assertThat(statusWithin(Duration.ofSeconds(2))).isEqualTo(200);
    }

    /** More than one client may have: the surplus is hung up on at once, and other clients do not notice. */
    @Test
    void shouldServeOthersAtOnceWhenOneClientTakesAllItCan() throws Exception {
        for (int client = 0; client < PageServer.HERE.fromOneAddress() + 40; client++) {
            Socket socket = new Socket();
            sockets.add(socket);
            socket.bind(new InetSocketAddress("127.0.0.2", 0));
            socket.connect(new InetSocketAddress("127.0.0.1", server.port()));
            try {
                socket.getOutputStream().write("GET /".getBytes(StandardCharsets.US_ASCII));
            } catch (IOException hungUp) {
                continue;
            }
        }

        assertThat(statusWithin(Duration.ofSeconds(2))).isEqualTo(200);
    }

    @Test
    void shouldHangUpOnWhoNeverEndsARequest() throws Exception {
        Socket half = say("GET /api/nights HTTP/1.1\r\nHost: 127.0.0.1");
        half.setSoTimeout(30_000);

        assertThat(half.getInputStream().read()).isEqualTo(-1);
    }

    @Test
    void shouldNotReadABodyWithoutEnd() throws Exception {
        Socket socket = say("POST /api/now/next HTTP/1.1\r\nHost: 127.0.0.1:" + server.port()
                + "\r\nContent-Length: 10000000000\r\n\r\n");

        assertThat(bytesTaken(socket, "x")).isLessThan(FAR_TOO_MUCH);
        assertThat(statusWithin(Duration.ofSeconds(5))).isEqualTo(200);
    }

    @Test
    void shouldNotReadAHeaderWithoutEnd() throws Exception {
        Socket socket = say("GET / HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\nX-Long: ");

        assertThat(bytesTaken(socket, "x")).isLessThan(FAR_TOO_MUCH);
        assertThat(statusWithin(Duration.ofSeconds(5))).isEqualTo(200);
    }

    @Test
    void shouldNotReadHeadersWithoutEnd() throws Exception {
        Socket socket = say("GET / HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\n");

        assertThat(bytesTaken(socket, "X-One-More: 1\r\n")).isLessThan(FAR_TOO_MUCH);
        assertThat(statusWithin(Duration.ofSeconds(5))).isEqualTo(200);
    }

    /** Sends until the server hangs up, or far too much was taken. */
    private static long bytesTaken(Socket socket, String words) throws IOException {
        byte[] block = words.repeat(65_536 / words.length()).getBytes(StandardCharsets.US_ASCII);
        OutputStream out = socket.getOutputStream();
        long taken = 0;
        try {
            while (taken < FAR_TOO_MUCH) {
                out.write(block);
                taken += block.length;
            }
        } catch (IOException hungUp) {
            return taken;
        }
        return taken;
    }

    private Socket say(String words) throws IOException {
        Socket socket = new Socket("127.0.0.1", server.port());
        sockets.add(socket);
        socket.getOutputStream().write(words.getBytes(StandardCharsets.US_ASCII));
        return socket;
    }

    private static int statusWithin(Duration limit) throws Exception {
        HttpRequest request = HttpRequest.newBuilder(URI.create(server.url() + "/api/nights"))
                .timeout(limit)
                .build();
        return HttpClient.newHttpClient()
                .send(request, HttpResponse.BodyHandlers.discarding())
                .statusCode();
    }
}
