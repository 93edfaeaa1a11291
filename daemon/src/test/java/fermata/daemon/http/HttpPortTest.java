package fermata.daemon.http;

import static org.assertj.core.api.Assertions.assertThat;

import io.undertow.server.HttpServerExchange;
import io.undertow.server.handlers.sse.ServerSentEventHandler;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class HttpPortTest {
    private static final Limits TIGHT = new Limits(4, 6);
    private static final String ASK = "GET /who HTTP/1.1\r\nHost: here\r\n\r\n";
    private static final String ASK_ONCE = "GET /who HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n";
    private static final int FAR_TOO_MUCH = 64 << 20;

    private final AtomicInteger atWork = new AtomicInteger();
    private final CountDownLatch workIsDone = new CountDownLatch(1);
    private HttpPort port;
    private Callers callers;

    private void open(Limits limits) throws IOException {
        InetSocketAddress address = new InetSocketAddress(InetAddress.getByName("127.0.0.1"), 0);
        port = new HttpPort(address, TIGHT, limits, this::answer);
        callers = new Callers(port.port());
    }

    @AfterEach
    void close() throws IOException {
        workIsDone.countDown();
        callers.close();
        port.close();
    }

    /** Says what was asked; under /stream it goes on until its client has gone, under /work it takes its time. */
    private void answer(HttpServerExchange exchange) throws Exception {
        String path = exchange.getRequestPath();
        if (path.equals("/stream")) {
            new ServerSentEventHandler((stream, last) -> stream.send(path)).handleRequest(exchange);
        } else if (path.equals("/much")) {
            HttpPort.answer(exchange, 200, new byte[FAR_TOO_MUCH], Duration.ofMillis(300));
        } else {
            if (path.equals("/work")) {
                atWork.incrementAndGet();
                workIsDone.await();
            }
            HttpPort.answer(exchange, 200, path.getBytes(StandardCharsets.UTF_8));
        }
    }

    @Test
    void shouldHangUpOnTheSurplusOfOneAddressAndServeAnother() throws IOException {
        open(TIGHT);
        List<Socket> halves = callers.halfRequests("127.0.0.2", 7);

        assertThat(Callers.hungUp(halves.subList(4, 7))).isEqualTo(3);
        assertThat(callers.answers("127.0.0.3", ASK_ONCE)).endsWith("/who");
    }

    /** What once held the pages up for five seconds at a time. */
    @Test
    void shouldServeOthersWhileOneAddressSendsEightyHalfRequests() throws IOException {
        open(new Limits(32, 128));
        List<Socket> halves = callers.halfRequests("127.0.0.2", 80);

        for (int other = 3; other < 53; other++) {
            assertThat(callers.answers("127.0.0." + other, ASK_ONCE)).endsWith("/who");
        }
        assertThat(Callers.hungUp(halves.subList(32, 80))).isEqualTo(48);
    }

    @Test
    void shouldHangUpOnTheSurplusOfAll() throws IOException {
        open(TIGHT);
        callers.halfRequests("127.0.0.2", 4);
        callers.halfRequests("127.0.0.3", 2);

        assertThat(Callers.hungUp(callers.halfRequests("127.0.0.4", 1))).isEqualTo(1);
    }

    @Test
    void shouldGiveThePlaceToAnotherWhenItsClientWent() throws Exception {
        open(TIGHT);
        for (Socket half : callers.halfRequests("127.0.0.2", 4)) {
            half.close();
        }

        String answer = "";
        while (!answer.endsWith("/who")) {
            answer = callers.answers("127.0.0.2", ASK_ONCE);
        }
        assertThat(answer).startsWith("HTTP/1.1 200 OK\r\n");
    }

    @Test
    void shouldGiveThePlacesToOthersHoweverOftenTheyAreTaken() throws Exception {
        open(TIGHT);
        int answered = 0;
        while (answered < 200) {
            // A place is free again a moment after its client has heard the end: some are asked for too soon.
            answered += callers.answers("127.0.0.2", ASK_ONCE).endsWith("/who") ? 1 : 0;
        }
    }

    /** A stream holds its place until its client goes. */
    @Test
    void shouldCountAStreamUntilItEnds() throws IOException {
        open(TIGHT);
        List<Socket> streams = callers.saying("127.0.0.2", 4, "GET /stream HTTP/1.1\r\nHost: here\r\n\r\n");
        for (Socket stream : streams) {
            assertThat(Callers.read(stream, "/stream"))
                    .startsWith("HTTP/1.1 200 OK\r\n")
                    .contains("Connection: close");
        }

        assertThat(Callers.hungUp(callers.halfRequests("127.0.0.2", 1))).isEqualTo(1);
    }

    @Test
    void shouldAnswerOneAfterTheOtherOnOneConnection() throws IOException {
        open(TIGHT);
        Socket socket = callers.connected("127.0.0.2");
        Callers.write(socket, ASK + "HEAD /two HTTP/1.1\r\nHost: here\r\n\r\nGET /th");
        Callers.write(socket, "ree HTTP/1.1\r\nHost: here\r\nConnection: close\r\n\r\n");

        String answers = Callers.read(socket, "/three");
        assertThat(answers.split("HTTP/1.1 200 OK\r\n")).hasSize(4);
        assertThat(answers).contains("Content-Length: 4\r\n").doesNotContain("/two", "Date:");
        assertThat(socket.getInputStream().read()).isEqualTo(-1);
    }

    @Test
    void shouldWorkOutSixteenAnswersAtATimeAndHearTheOthersMeanwhile() throws Exception {
        open(new Limits(40, 40));
        List<Socket> askers = callers.saying("127.0.0.2", 30, "GET /work HTTP/1.1\r\nHost: here\r\n\r\n");
        while (atWork.get() < HttpPort.AT_ONCE) {
            Thread.onSpinWait();
        }
        // Refused without work, by the thread that reads.
        assertThat(callers.answers("127.0.0.3", "GET / HTTP/1.1\r\nHost: one\r\nHost: two\r\n\r\n"))
                .contains(" 400 ");
        assertThat(atWork.get()).isEqualTo(HttpPort.AT_ONCE);

        workIsDone.countDown();
        for (Socket asker : askers) {
            Callers.read(asker, "/work");
        }
    }

    /** Else a client could trickle along and keep its place for ever. */
    @Test
    void shouldHangUpOnWhoSendsAHeadTooSlowly() throws Exception {
        open(TIGHT);
        Socket slow = callers.connected("127.0.0.2");
        slow.setSoTimeout(200);
        Callers.write(slow, "GET / HTTP/1.1\r\nX: ");

        int letters = 0;
        while (Callers.hears(slow)) {
            letters++;
            Callers.write(slow, "x");
        }
        assertThat(letters).isBetween(1, 2 * HttpPort.HEAD_SECONDS * 5);
    }

    @Test
    void shouldHangUpOnWhoDoesNotTakeItsAnswer() throws Exception {
        open(TIGHT);
        Socket lazy = callers.connected("127.0.0.2");
        Callers.write(lazy, "GET /much HTTP/1.1\r\nHost: here\r\n\r\n");
        lazy.getInputStream().readNBytes(10);

        // All four places are given again, so the connection was ended while nobody read.
        callers.halfRequests("127.0.0.2", 3);
        String answer = "";
        while (!answer.endsWith("/who")) {
            answer = callers.answers("127.0.0.2", ASK_ONCE);
        }
        assertThat(answer).startsWith("HTTP/1.1 200 OK\r\n");
    }

    @Test
    void shouldEndWhatIsOpenWhenItIsClosed() throws IOException {
        open(TIGHT);
        Socket socket = callers.connected("127.0.0.2");
        Callers.write(socket, ASK);
        Callers.read(socket, "/who");
        Socket half = callers.halfRequests("127.0.0.2", 1).get(0);
        Socket stream = callers.saying("127.0.0.2", 1, "GET /stream HTTP/1.1\r\nHost: here\r\n\r\n")
                .get(0);
        Callers.read(stream, "/stream\n\n");

        port.close();

        assertThat(Callers.hungUp(List.of(socket, half, stream))).isEqualTo(3);
    }
}
