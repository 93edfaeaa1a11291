package fermata.daemon.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A port on this machine, whose addresses 127.0.0.2 to 4 are three clients. */
@Timeout(60)
class HttpPortTest {
    private static final Limits TIGHT = new Limits(4, 6);
    private static final String ASK = "GET /who HTTP/1.1\r\nHost: here\r\n\r\n";

    private final List<Socket> sockets = new ArrayList<>();
    private HttpPort port;

    @BeforeEach
    void open() throws IOException {
        port = HttpPort.open(
                new InetSocketAddress(InetAddress.getByName("127.0.0.1"), 0), TIGHT, TIGHT, HttpPortTest::answer);
    }

    @AfterEach
    void close() throws IOException {
        for (Socket socket : sockets) {
            socket.close();
        }
        port.close();
    }

    /** Says what was asked; under /stream it goes on until its client has gone. */
    private static void answer(Exchange exchange) throws IOException {
        byte[] path = exchange.request().path().getBytes(StandardCharsets.UTF_8);
        if (exchange.request().path().equals("/stream")) {
            exchange.stream(200).write(path);
        } else {
            exchange.answer(200, path);
        }
    }

    @Test
    void shouldHangUpOnTheSurplusOfOneAddressAndServeAnother() throws IOException {
        List<Socket> halves = halfRequests("127.0.0.2", 7);

        assertThat(hungUp(halves.subList(4, 7))).isEqualTo(3);
        assertThat(say("127.0.0.3", ASK)).endsWith("/who");
    }

    @Test
    void shouldHangUpOnTheSurplusOfAll() throws IOException {
        halfRequests("127.0.0.2", 4);
        halfRequests("127.0.0.3", 2);

        assertThat(hungUp(halfRequests("127.0.0.4", 1))).isEqualTo(1);
    }

    @Test
    void shouldGiveThePlaceToAnotherWhenItsClientWent() throws Exception {
        for (Socket half : halfRequests("127.0.0.2", 4)) {
            half.close();
        }

        String answer = "";
        while (!answer.endsWith("/who")) {
            answer = say("127.0.0.2", ASK);
        }
        assertThat(answer).startsWith("HTTP/1.1 200 OK\r\n");
    }

    /** A stream holds its place, and its exchange gives it back. */
    @Test
    void shouldCountAStreamUntilItIsClosed() throws IOException {
        List<Socket> streams =
                IntStream.range(0, 4).mapToObj(number -> connected("127.0.0.2")).toList();
        for (Socket stream : streams) {
            write(stream, "GET /stream HTTP/1.1\r\nHost: here\r\n\r\n");
            assertThat(read(stream, "/stream"))
                    .startsWith("HTTP/1.1 200 OK\r\n")
                    .contains("Connection: close");
        }

        assertThat(hungUp(halfRequests("127.0.0.2", 1))).isEqualTo(1);
    }

    @Test
    void shouldAnswerOneAfterTheOtherOnOneConnection() throws IOException {
        Socket socket = connected("127.0.0.2");
        write(socket, ASK + "\r\nHEAD /two HTTP/1.1\r\nHost: here\r\n\r\nGET /th");
        write(socket, "ree HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n");

        String answers = read(socket, "/three");
        assertThat(answers.split("HTTP/1.1 200 OK\r\n")).hasSize(4);
        assertThat(answers).contains("Content-Length: 4\r\n").doesNotContain("/two");
        assertThat(socket.getInputStream().read()).isEqualTo(-1);
    }

    @Test
    void shouldSayWhatIsWrongAndHangUp() throws IOException {
        assertThat(say("127.0.0.2", "GET / HTTP/3.0\r\n\r\n")).startsWith("HTTP/1.1 505 ");
        assertThat(say("127.0.0.2", "GET /%zz HTTP/1.1\r\n\r\n")).startsWith("HTTP/1.1 400 ");
        assertThat(say("127.0.0.2", "GET / HTTP/1.1\r\nX: " + "x".repeat(HeadReader.LONGEST_BYTES)))
                .startsWith("HTTP/1.1 431 ");
    }

    @Test
    void shouldNotTakeTheBodyForTheNextRequest() throws IOException {
        String answers = say("127.0.0.2", "POST /who HTTP/1.1\r\nHost: here\r\nContent-Length: 44\r\n\r\n" + ASK);

        assertThat(answers).endsWith("/who").contains("Connection: close");
        assertThat(answers.split("HTTP/1.1")).hasSize(2);
    }

    @Test
    void shouldEndWhatIsOpenWhenItIsClosed() throws IOException {
        Socket socket = connected("127.0.0.2");
        write(socket, ASK);
        read(socket, "/who");

        port.close();

        assertThat(hungUp(List.of(socket))).isEqualTo(1);
    }

    private List<Socket> halfRequests(String from, int count) throws IOException {
        List<Socket> halves = new ArrayList<>();
        for (int number = 0; number < count; number++) {
            Socket socket = connected(from);
            halves.add(socket);
            try {
                write(socket, "GET / HTTP/1.1\r\nHost");
            } catch (IOException hungUp) {
                // Then its end says so.
                continue;
            }
        }
        return halves;
    }

    /** How many of these are hung up on, sooner than a half request is. */
    private static long hungUp(List<Socket> clients) throws IOException {
        long ended = 0;
        for (Socket client : clients) {
            client.setSoTimeout(1000 * HttpPort.HEAD_SECONDS / 2);
            try {
                ended += client.getInputStream().read() < 0 ? 1 : 0;
            } catch (SocketTimeoutException stillThere) {
                continue;
            } catch (IOException reset) {
                ended++;
            }
        }
        return ended;
    }

    private Socket connected(String from) {
        try {
            Socket socket = new Socket();
            sockets.add(socket);
            socket.setSoTimeout(10_000);
            socket.bind(new InetSocketAddress(InetAddress.getByName(from), 0));
            socket.connect(new InetSocketAddress("127.0.0.1", port.port()));
            return socket;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    /** The answer to some words, up to the end of the connection. */
    private String say(String from, String words) throws IOException {
        Socket socket = connected(from);
        try {
            write(socket, words);
            socket.shutdownOutput();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.US_ASCII);
        } catch (IOException hungUp) {
            return "";
        }
    }

    private static void write(Socket socket, String words) throws IOException {
        socket.getOutputStream().write(words.getBytes(StandardCharsets.US_ASCII));
    }

    private static String read(Socket socket, String last) throws IOException {
        ByteArrayOutputStream heard = new ByteArrayOutputStream();
        while (!heard.toString(StandardCharsets.US_ASCII).endsWith(last)) {
            int next = socket.getInputStream().read();
            assertThat(next).as("the connection ended after %s", heard).isNotNegative();
            heard.write(next);
        }
        return heard.toString(StandardCharsets.US_ASCII);
    }
}
