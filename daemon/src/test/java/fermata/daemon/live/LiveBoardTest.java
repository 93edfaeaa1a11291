package fermata.daemon.live;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Event;
import fermata.analysis.event.MarkKind;
import fermata.analysis.event.Origin;
import fermata.daemon.bluetooth.LinkStatus;
import fermata.daemon.json.Json;
import fermata.daemon.json.JsonLine;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.turnfile.EventLines;
import fermata.daemon.turnfile.StreamClock;
import fermata.decoder.cube.CubeState;
import fermata.decoder.stream.OpenLayout;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Queue;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

class LiveBoardTest {
    private static final Origin COOK = HandDriven.COOK;
    private static final String FIRST = "R U2 F'";
    private static final String BACK = "F U2 R'";
    private static final long STARTED_NANOS = 7_000_000_000L;

    @TempDir
    private Path home;

    private Store store;
    private long captureId;
    private HandDriven cube;

    @BeforeEach
    void open() {
        store = Store.openForWriting(new Home(home), () -> LocalDateTime.of(2026, 11, 24, 20, 0));
        captureId = store.captures()
                .begin(
                        new CaptureStart(
                                UUID.randomUUID(), "boot", Instant.EPOCH, STARTED_NANOS, ZoneOffset.UTC, COOK, "radio"),
                        OpenLayout.profileText(),
                        "")
                .captureId();
        cube = new HandDriven(
                new StandingClock(),
                new TellingJournal(store.captures(), captureId, COOK, STARTED_NANOS),
                FIRST,
                "L D B");
    }

    @AfterEach
    void close() {
        cube.close();
        store.close();
    }

    @Test
    void shouldTellAnEveningFromTheScrambleToTheNext() {
        assertThat(evening().path("scramble").path("turns")).hasSize(3);
        cube.turn(FIRST, 400);
        assertThat(evening().path("phase").asString()).isEqualTo("ready");
        cube.turn("F", 4_000);
        assertThat(evening().path("phase").asString()).isEqualTo("solving");
        cube.turn("U2", 300);
        cube.turn("R' R R'", 350);

        JsonNode last = evening().path("last");
        assertThat(last.path("time_us").asLong()).isEqualTo(300_000 + 350_000);
        assertThat(last.path("turns").asInt()).isEqualTo(3);
        assertThat(last.path("inspection_us").asLong()).isEqualTo(4_000_000 - 1_000_000);
        assertThat(evening().path("scramble").path("turns").get(0).asString()).isEqualTo("L");
    }

    @Test
    void shouldKeepTheScrambleBetweenTheSolvedCubeAndItsFirstTurn() {
        cube.turn("U U'", 500);
        cube.turn(FIRST, 400);
        cube.turn(BACK, 400);
        cube.close();

        List<Event> told = store.captures().events(captureId).stream()
                .map(event ->
                        new EventLines("1", COOK, StreamClock.DEVICE).read(JsonLine.parse("told", 1, event.line())))
                .toList();

        assertThat(told).hasSize(1);
        Event.Mark mark = (Event.Mark) told.get(0);
        assertThat(mark.kind()).isEqualTo(MarkKind.SCRAMBLE);
        assertThat(mark.text()).isEqualTo(FIRST);
        // Solved again a second after the beginning, begun 400 ms later: half way between.
        assertThat(mark.atMicros()).isEqualTo(1_000_000 + 400_000 / 2);
    }

    @Test
    void shouldGiveNoTimeWhenTurnsOfTheSolveWereLost() {
        cube.turn(FIRST, 400);
        cube.turn("F", 2_000);
        cube.turnUnheard("U U' U U' U U' U U'");
        cube.turn("U2", 300);
        cube.waitForLateFrames();
        cube.reportState();
        cube.turn("R'", 300);

        assertThat(evening().path("last").path("whole").asBoolean(true)).isFalse();
        assertThat(evening().path("last").path("time_us").isNull()).isTrue();
    }

    @Test
    void shouldFindThePlaceAgainWhenTurnsOfTheScrambleWereLost() {
        cube.turn("R", 400);
        cube.turnUnheard("U U' U U' U U' U U'");
        cube.turn("U2", 300);
        cube.waitForLateFrames();
        assertThat(evening().path("scramble").path("astray").asBoolean(false)).isTrue();
        assertThat(state().path("cube").path("facelets").isNull()).isTrue();
        cube.reportState();

        assertThat(evening().path("scramble").path("done").asInt()).isEqualTo(2);
        assertThat(state().path("cube").path("facelets").asString())
                .isEqualTo(CubeState.SOLVED.apply(HandDriven.turns("R U2")).facelets());
    }

    /** An end of the scramble that only the cube's own report tells of is one from which a solve is timed. */
    @Test
    void shouldTimeTheSolveAfterAScrambleOfWhichTurnsWereLost() {
        cube.turn("R", 400);
        cube.turnUnheard("U U' U U' U U' U U'");
        cube.turn("U2 F'", 300);
        cube.waitForLateFrames();
        cube.reportState();
        assertThat(evening().path("phase").asString()).isEqualTo("ready");
        cube.turn("F", 4_000);
        cube.turn("U2 R'", 300);

        JsonNode last = evening().path("last");
        assertThat(last.path("whole").asBoolean(false)).isTrue();
        assertThat(last.path("time_us").asLong()).isEqualTo(600_000);
        assertThat(last.path("inspection_us").asLong()).isEqualTo(4_000_000 - 1_000_000);
    }

    /** The first of the six turns unheard is lost, the others are repaired. The log of it is read as a solve too. */
    @Test
    void shouldKnowAtRestThatTheCubeIsSolvedWhenOneLostTurnWouldHaveItSo() {
        cube.turn(FIRST, 400);
        cube.turn("F", 2_000);
        cube.turnUnheard("U2 D D' L L' D");
        cube.turn("D' R'", 300);
        cube.waitForLateFrames();
        cube.waitForLateFrames();

        assertThat(state().path("cube").path("facelets").asString()).isEqualTo(CubeState.SOLVED.facelets());
        assertThat(evening().path("last").path("whole").asBoolean(true)).isFalse();
        assertThat(evening().path("scramble").path("turns").get(0).asString()).isEqualTo("L");
    }

    /** Three turns ahead of those heard, the cube tells its state; then more are lost than these three. */
    @Test
    void shouldNotTakeAReportForTheStateAfterALossThatReachesBeyondIt() {
        cube.turn("R", 400);
        cube.turnUnheard("U2 F' L");
        cube.reportState();
        cube.turnUnheard("D B2 R' U F L2 D B'");
        cube.turn("U2", 300);
        cube.waitForLateFrames();

        assertThat(state().path("cube").path("facelets").isNull()).isTrue();
    }

    @Test
    void shouldTakeTheSolversWordThatTheCubeIsSolved() {
        cube.turn("L", 400);
        cube.board.cubeIsSolved();

        assertThat(evening().path("scramble").path("astray").asBoolean(true)).isFalse();
        cube.turn(FIRST, 400);
        assertThat(evening().path("phase").asString()).isEqualTo("ready");
        cube.close();
        assertThat(store.captures().events(captureId))
                .extracting(event -> event.kind())
                .containsExactly("reference", "mark");
    }

    /** The word was given when nobody knew the state; what the cube then says of itself must not take it back. */
    @Test
    void shouldKeepTheSolversWordWhenTheCubeReportsItsStateLater() {
        cube.turn("L", 400);
        cube.turnUnheard("U R2 U' F U R U2 F2");
        cube.turn("B", 300);
        cube.waitForLateFrames();
        cube.board.cubeIsSolved();
        cube.board.cubeIsSolved();
        cube.turn("R", 400);
        cube.reportState();

        assertThat(evening().path("scramble").path("astray").asBoolean(true)).isFalse();
        assertThat(evening().path("scramble").path("done").asInt()).isEqualTo(1);
        cube.turn("U2 F'", 400);
        cube.turn(BACK, 400);
        assertThat(evening().path("last").path("whole").asBoolean(false)).isTrue();
        cube.close();
        assertThat(store.captures().events(captureId))
                .extracting(event -> event.kind())
                .containsExactly("reference", "reference", "reference", "mark");
    }

    /** Turned unheard before it was listened to, as between two evenings. */
    @Test
    void shouldKeepTheSolversWordThatCameBeforeAnyReport() {
        cube.turnUnheard("U R2 U' F U R U2 F2");
        cube.board.cubeIsSolved();
        cube.turn("R", 400);
        cube.reportState();

        assertThat(evening().path("scramble").path("astray").asBoolean(true)).isFalse();
        assertThat(evening().path("scramble").path("done").asInt()).isEqualTo(1);
    }

    @Test
    void shouldPutTheScrambleAsideWhenAnotherIsWanted() {
        cube.board.nextScramble();

        assertThat(evening().path("scramble").path("turns").get(0).asString()).isEqualTo("L");
    }

    @Test
    void shouldSayWhyItDoesNotListenWithoutAnyAddress() throws Exception {
        Queue<LiveMessage> heard = new ConcurrentLinkedQueue<>();
        cube.board.join(heard::add);
        heard.clear();
        cube.link(LinkStatus.State.SCANNING, "waiting for 02:00:00:00:00:02 at /org/bluez/hci0/dev_02_00_00_00_00_02");
        long until = System.nanoTime() + 5_000_000_000L;
        while (heard.isEmpty() && System.nanoTime() < until) {
            Thread.sleep(10);
        }

        JsonNode link = Json.read(heard.remove().json());
        assertThat(link.path("listening").asBoolean(true)).isFalse();
        assertThat(link.path("reason").asString()).contains("Turn a face to wake it");
        assertThat(link.path("detail").asString()).isEqualTo("waiting for the cube at /org/bluez/hci0/the cube");
    }

    @Test
    void shouldTellEveryTurnOnceAndInOrderToEachWhoJoined() {
        Queue<LiveMessage> early = new ConcurrentLinkedQueue<>();
        Queue<LiveMessage> late = new ConcurrentLinkedQueue<>();
        cube.board.join(early::add);
        cube.turn("R", 300);
        Runnable leave = cube.board.join(late::add);
        cube.turn("U2", 300);
        leave.run();
        cube.reportBattery(87);
        cube.turn("F'", 300);

        assertThat(turnsIn(early)).containsExactly("R", "U2", "F'");
        assertThat(turnsIn(late)).containsExactly("U2");
        assertThat(state().path("link").path("battery_percent").asInt()).isEqualTo(87);
    }

    private static List<String> turnsIn(Queue<LiveMessage> heard) {
        return heard.stream()
                .filter(message -> message.event().equals("turn"))
                .map(message -> Json.read(message.json()).path("turn").asString())
                .toList();
    }

    private JsonNode state() {
        return Json.read(cube.told());
    }

    private JsonNode evening() {
        return state().path("evening");
    }

    /** The machine may be as slow as it likes: only what the test says passes. */
    private static final class StandingClock implements MonotonicClock {
        @Override
        public long nanos() {
            return STARTED_NANOS;
        }

        @Override
        public long machineNanos(Duration duration) {
            return duration.toNanos();
        }
    }
}
