package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.CaptureListener;
import fermata.daemon.capture.CapturePipeline;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.MemoryJournal;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.live.HandDriven;
import fermata.daemon.live.LiveBoard;
import fermata.daemon.live.LiveFeed;
import fermata.daemon.live.LiveMessage;
import fermata.daemon.time.MonotonicClock;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.OpenLayout;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(120)
class LiveStreamsTest {
    private static final int FRAMES = 300;
    /** The product's bound on how late any frame may be. */
    private static final double BOUND_MILLIS = 50;

    private static final int MOST_RUNS = 3;
    private static final String TOLD_TURN = "data:{\"turn\":\"";

    private final List<Socket> sockets = new ArrayList<>();

    @AfterEach
    void hangUp() throws IOException {
        for (Socket socket : sockets) {
            socket.close();
        }
    }

    @Test
    void shouldLoseNoFrameAndNotDelayTheCaptureWhenFiftyListenAndFiveStall() throws Exception {
        List<Double> latest = new ArrayList<>();
        while (latest.size() < MOST_RUNS && latest.stream().allMatch(late -> late >= BOUND_MILLIS)) {
            List<Long> lateness = lateness(50, 5);
            latest.add(lateness.get(lateness.size() - 1) / 1e6);
            System.out.printf(
                    "lateness of a commit with 55 clients: median %.2f ms, latest %.2f ms%n",
                    lateness.get(lateness.size() / 2) / 1e6, lateness.get(lateness.size() - 1) / 1e6);
        }

        // A machine that tests other things too may stop any thread for so long, but not in every run; a client that
        // holds up the capture does so each time.
        assertThat(latest).as("the latest frame of each run, in ms").anyMatch(late -> late < BOUND_MILLIS);
    }

    private static PipelineSettings atOnce() {
        PipelineSettings usual = PipelineSettings.forBoard();
        return new PipelineSettings(
                usual.queueFrames(),
                Duration.ZERO,
                Duration.ZERO,
                usual.groupItems(),
                usual.firstRetry(),
                usual.longestRetry(),
                usual.patience());
    }

    /** A capture of frames at 100 a second; nanoseconds from arrival to the commit's being over and told, sorted. */
    private List<Long> lateness(int listening, int stalling) throws Exception {
        MonotonicClock clock = MonotonicClock.system();
        MemoryJournal journal = new MemoryJournal();
        List<Long> lateness = new CopyOnWriteArrayList<>();
        try (LiveBoard board = LiveBoard.start(Optional::empty, clock);
                PageServer server = PageServer.start(RehearsedPractice.empty(), board, Audience.thisMachine(), 0)) {
            CaptureListener told = items -> items.forEach(item -> lateness.add(clock.nanos() - item.atNanos()));
            List<ConcurrentLinkedQueue<String>> heard = new ArrayList<>();
            List<String> made = new ArrayList<>();
            try (CapturePipeline pipeline = CapturePipeline.start(
                    atOnce(),
                    clock,
                    Set.of(),
                    journal,
                    List.of(board.begin(OpenLayout.profile(), HandDriven.COOK), told))) {
                for (int client = 0; client < listening; client++) {
                    heard.add(listen(server));
                }
                for (int client = 0; client < stalling; client++) {
                    connect(server, 1024);
                }
                await(() -> heard.stream().allMatch(lines -> !lines.isEmpty()));
                pipeline.intake().connected(clock.nanos(), new LinkChange.Connected("02:00:00:00:00:02", false));
                play(pipeline, clock, made);
                await(() -> journal.frames().size() == FRAMES);
            }
            assertThat(heard).hasSize(listening);
            for (ConcurrentLinkedQueue<String> lines : heard) {
                await(() -> turnsIn(lines).size() >= FRAMES);
                assertThat(turnsIn(lines)).isEqualTo(made);
            }
        }
        List<Long> sorted = lateness.stream().sorted().toList();
        assertThat(sorted).hasSizeGreaterThanOrEqualTo(FRAMES);
        return sorted;
    }

    private static void play(CapturePipeline pipeline, MonotonicClock clock, List<String> made) throws Exception {
        SplittableRandom random = new SplittableRandom(5);
        List<MadeTurn> turns = new ArrayList<>();
        for (int sequence = 1; sequence <= FRAMES; sequence++) {
            Turn turn = Turn.ofIndex(random.nextInt(18));
            turns.add(new MadeTurn(turn, sequence * 10L));
            made.add(turn.toString());
            byte[] frame = OpenLayout.encodeTurns(sequence, 1, turns.subList(Math.max(0, sequence - 6), sequence));
            pipeline.intake().frame(OpenLayout.TURNS.toString(), clock.nanos(), frame);
            clock.sleep(Duration.ofMillis(10));
        }
    }

    @Test
    void shouldDropThoseWhoStallAndGoOnForTheOthers() throws Exception {
        Megaphone feed = new Megaphone();
        try (PageServer server = PageServer.start(RehearsedPractice.empty(), feed, Audience.thisMachine(), 0)) {
            List<ConcurrentLinkedQueue<String>> heard = new ArrayList<>();
            for (int client = 0; client < 8; client++) {
                heard.add(listen(server));
            }
            for (int client = 0; client < 5; client++) {
                connect(server, 1024);
            }
            await(() -> feed.hearers.size() == 13);
            int said = 0;
            while (feed.hearers.size() > 8 && said < 2_000) {
                int number = ++said;
                feed.say(number);
                // At the pace of those who listen, else a busy machine makes one of them a straggler too.
                await(() -> heard.stream().allMatch(lines -> lines.size() > number));
            }
            int last = said;

            assertThat(feed.hearers).as("hearers left after %d messages", last).hasSize(8);
            for (ConcurrentLinkedQueue<String> lines : heard) {
                await(() -> lines.stream().anyMatch(line -> line.startsWith("data:{\"n\":" + last + ",")));
            }
        }
    }

    @Test
    void shouldRefuseOneMoreThanItCanServeAndAcceptAgainWhenOneLeft() throws Exception {
        Megaphone feed = new Megaphone();
        try (PageServer server = PageServer.start(RehearsedPractice.empty(), feed, Audience.thisMachine(), 0)) {
            for (int client = 0; client < LiveStreams.MOST_CLIENTS; client++) {
                listen(server);
            }
            await(() -> feed.hearers.size() == LiveStreams.MOST_CLIENTS);
            assertThat(statusLine(connect(server, 65536))).contains("503");
            sockets.get(0).close();
            await(() -> {
                feed.say(0);
                return feed.hearers.size() < LiveStreams.MOST_CLIENTS;
            });

            assertThat(statusLine(connect(server, 65536))).contains("200");
        }
    }

    /** They ask at once, before any of them was answered. */
    @Test
    void shouldServeNoMoreThanItCanWhenManyComeAtOnce() throws Exception {
        Megaphone feed = new Megaphone();
        try (PageServer server = PageServer.start(RehearsedPractice.empty(), feed, Audience.thisMachine(), 0)) {
            for (int client = 0; client < 120; client++) {
                Socket socket = new Socket("127.0.0.1", server.port());
                socket.setSoTimeout(20_000);
                sockets.add(socket);
            }
            byte[] request = ("GET /api/live HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII);
            List<Thread> asking = sockets.stream()
                    .map(socket -> new Thread(() -> ask(socket, request)))
                    .toList();
            asking.forEach(Thread::start);
            for (Thread thread : asking) {
                thread.join();
            }
            List<String> answers =
                    sockets.stream().map(LiveStreamsTest::statusLine).toList();
            assertThat(answers.stream().filter(answer -> answer.contains("200")))
                    .hasSize(LiveStreams.MOST_CLIENTS);
            assertThat(answers.stream().filter(answer -> answer.contains("503")))
                    .hasSize(120 - LiveStreams.MOST_CLIENTS);
        }
    }

    private static void ask(Socket socket, byte[] request) {
        try {
            socket.getOutputStream().write(request);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Says messages of 64 KB, so that the kernel's buffers fill within a test. */
    private static final class Megaphone implements LiveFeed {
        private final List<Consumer<LiveMessage>> hearers = new CopyOnWriteArrayList<>();
        private final String padding = " ".repeat(65_536);

        void say(int number) {
            LiveMessage message = new LiveMessage("turn", "{\"n\":" + number + "," + padding + "\"x\":0}");
            hearers.forEach(hearer -> hearer.accept(message));
        }

        @Override
        public Runnable join(Consumer<LiveMessage> hearer) {
            hearer.accept(new LiveMessage("state", "{}"));
            hearers.add(hearer);
            return () -> hearers.remove(hearer);
        }

        @Override
        public boolean isListening() {
            return true;
        }

        @Override
        public void nextScramble() {
            throw new UnsupportedOperationException("nobody asks here");
        }

        @Override
        public void cubeIsSolved() {
            throw new UnsupportedOperationException("nobody asks here");
        }
    }

    private ConcurrentLinkedQueue<String> listen(PageServer server) throws IOException {
        Socket socket = connect(server, 65_536);
        ConcurrentLinkedQueue<String> lines = new ConcurrentLinkedQueue<>();
        Thread reader = new Thread(() -> read(socket, lines), "listening client");
        reader.setDaemon(true);
        reader.start();
        return lines;
    }

    private static void read(Socket socket, ConcurrentLinkedQueue<String> lines) {
        try (BufferedReader reader =
                new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (line.startsWith("data:")) {
                    lines.add(line.substring(0, Math.min(line.length(), 60)));
                }
            }
        } catch (IOException hungUp) {
            // The test is over, or this client was dropped: what it heard tells.
            return;
        }
    }

    private Socket connect(PageServer server, int receiveBytes) throws IOException {
        Socket socket = new Socket();
        sockets.add(socket);
        socket.setReceiveBufferSize(receiveBytes);
        socket.connect(new InetSocketAddress("127.0.0.1", server.port()));
        String request = "GET /api/live HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\n\r\n";
        socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
        return socket;
    }

    private static String statusLine(Socket socket) {
        try {
            return new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> turnsIn(ConcurrentLinkedQueue<String> lines) {
        return lines.stream()
                .filter(line -> line.startsWith(TOLD_TURN))
                .map(line -> line.substring(TOLD_TURN.length(), line.indexOf('"', TOLD_TURN.length())))
                .toList();
    }

    private static void await(BooleanSupplier condition) throws InterruptedException {
        long until = System.nanoTime() + Duration.ofSeconds(20).toNanos();
        while (!condition.getAsBoolean()) {
            assertThat(System.nanoTime()).as("not so within 20 s").isLessThan(until);
            Thread.sleep(10);
        }
    }
}
