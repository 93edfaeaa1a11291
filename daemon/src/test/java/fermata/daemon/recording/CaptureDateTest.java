package fermata.daemon.recording;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.bluetooth.BluetoothCapture;
import fermata.daemon.bluetooth.CentralSettings;
import fermata.daemon.capture.PipelineSettings;
import fermata.daemon.json.SolvesView;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.practice.Practice;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.telling.Exporter;
import fermata.daemon.time.ClockProof;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.ScriptedTurn;
import fermata.daemon.virtualcube.VirtualCube;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.stream.OpenLayout;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A board without a battery clock, from the virtual cube over a real bus to the list of solves. */
@Timeout(120)
class CaptureDateTest {
    private static final ZoneId OSLO = ZoneId.of("Europe/Oslo");
    private static final String SCRAMBLE = "D2 F' U2 L B' R2 F D' L2 U R' B2 D F2 U' L' B R U2 F' D";
    private static final long STEP_MICROS = 400_000;
    /** On a civil clock that was never set right: the kernel's own beginning. */
    private static final Instant UNSET = Instant.parse("1970-01-01T00:00:20Z");

    @TempDir
    Path directory;

    private final MonotonicClock clock = MonotonicClock.scaled(8);
    private Store store;
    private SettableClock civil;

    @BeforeEach
    void setUp() {
        store = Store.openForWriting(new Home(directory), () -> LocalDateTime.of(2026, 11, 24, 20, 0));
        civil = new SettableClock(clock, UNSET);
    }

    @AfterEach
    void tearDown() {
        store.close();
    }

    @Test
    void shouldFileTheRunningCaptureUnderItsDayWhenTheClockIsSetWhileTheCubeIsLinked() throws Exception {
        try (VirtualCube cube = VirtualCube.start(
                        VirtualCube.Setup.playing(script()), clock, new SplittableRandom(3), new BluezTemper());
                Recording recording = Recording.start(store, plan(cube), clock, "", List.of())) {
            long beganNanos = capture().start().startedNanos();
            CaptureDate date = new CaptureDate(store.civilTimes(), recording.captureId(), civil);
            date.look();
            cube.finished().get(60, TimeUnit.SECONDS);
            awaitTurns(script().size());
            assertThat(solve().day()).isEqualTo(WrittenDay.UNKNOWN_WORD);
            assertThat(solve().startedAt()).isNull();
            List<String> heard = exported();

            // Without a word of the network the clock may be set to anything.
            for (String wrong : List.of("2106-02-07T06:28:16Z", "1969-12-31T23:59:59Z", "2026-11-20T03:30:00Z")) {
                civil.set(Instant.parse(wrong), ClockProof.NONE);
                date.look();
                assertThat(solve().day()).as(wrong).isEqualTo(WrittenDay.UNKNOWN_WORD);
            }
            // Set by the network to twenty to four in the night in which summer time ends.
            assertDay(date, beganNanos, "2026-10-25T02:40:00Z", "2026-10-25T02:41:00Z", "2026-10-24");
            // A better answer: it was four, so that the solve after it is of the next day.
            assertDay(date, beganNanos, "2026-10-25T03:00:00Z", "2026-10-25T03:01:00Z", "2026-10-25");
            // And once more back, by a year, over the hour that summer time leaves out.
            assertDay(date, beganNanos, "2026-03-29T01:30:00Z", "2026-03-29T01:31:00Z", "2026-03-28");
            assertThat(exported()).as("no interval moved").isEqualTo(heard);
            assertThat(recording.status().state().name()).isEqualTo("LISTENING");
            assertThat(store.captures().all()).as("one capture throughout").hasSize(1);
        }
    }

    /** Sets the clock so that the capture began at that moment. */
    private void assertDay(CaptureDate date, long beganNanos, String began, String latest, String day) {
        civil.set(Instant.parse(began).plusNanos(clock.nanos() - beganNanos), ClockProof.NETWORK);
        date.look();
        assertThat(date.started().orElseThrow())
                .isBetween(Instant.parse(began).minusMillis(500), Instant.parse(latest));
        assertThat(solve().day()).as("began at " + began).isEqualTo(day);
        assertThat(new Practice(store).nights().nights()).singleElement().satisfies(night -> {
            assertThat(night.day()).isEqualTo(day);
            assertThat(night.solves()).isEqualTo(1);
        });
    }

    @Test
    void shouldDateEarlierCapturesOfTheSameStartWhenALaterOneKnowsTheDate() {
        CaptureRow before = undated();
        civil.sleep(Duration.ofHours(2));
        CaptureRow after = undated();
        civil.set(Instant.parse("2026-11-24T20:00:00Z"), ClockProof.NETWORK);
        new CaptureDate(store.civilTimes(), after.id(), civil).look();

        Instant first = start(before.id());
        Instant second = start(after.id());
        assertThat(second).isBetween(Instant.parse("2026-11-24T19:58:00Z"), Instant.parse("2026-11-24T20:00:00Z"));
        Duration apart =
                Duration.ofNanos(after.start().startedNanos() - before.start().startedNanos());
        assertThat(Duration.between(first, second)
                        .minus(apart)
                        .minus(Duration.ofHours(2))
                        .abs())
                .isLessThan(Duration.ofMillis(5));
        // One that comes later, on a clock that was unset by hand, is dated by what was known.
        civil.set(UNSET, ClockProof.NONE);
        CaptureRow last = undated();
        assertThat(store.captures().find(last.id()).orElseThrow().start().isDated())
                .isTrue();
        assertThat(start(last.id())).isBetween(second, second.plusSeconds(60));
        assertThat(start(before.id())).isEqualTo(first);
    }

    private CaptureRow undated() {
        try (VirtualCube cube = VirtualCube.start(
                        VirtualCube.Setup.playing(List.of()), clock, new SplittableRandom(3), new BluezTemper());
                Recording recording = Recording.start(store, plan(cube), clock, "", List.of())) {
            new CaptureDate(store.civilTimes(), recording.captureId(), civil).look();
            return store.captures().find(recording.captureId()).orElseThrow();
        }
    }

    private Instant start(long captureId) {
        return store.captures().find(captureId).orElseThrow().start().startedWall();
    }

    private CaptureRow capture() {
        return store.captures().all().get(0);
    }

    /** The turns with their times; of the states that are asked for there are ever more. */
    private List<String> exported() {
        return new Exporter(store)
                .stream(capture(), true).eventLines().stream()
                        .filter(line -> line.startsWith("{\"turn\""))
                        .toList();
    }

    private SolvesView.Item solve() {
        List<SolvesView.Item> solves = new Practice(store).solves().solves();
        assertThat(solves).hasSize(1);
        return solves.get(0);
    }

    private void awaitTurns(int turns) throws InterruptedException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(60);
        while (exported().size() < turns) {
            assertThat(System.nanoTime()).as("waited too long").isLessThan(deadline);
            TimeUnit.MILLISECONDS.sleep(50);
        }
    }

    private static List<ScriptedTurn> script() {
        List<Turn> scramble = Sequence.parse(SCRAMBLE)
                .walk(fermata.decoder.orientation.Orientation.IDENTITY)
                .turns();
        List<Turn> solution =
                new ArrayList<>(scramble.stream().map(Turn::inverse).toList());
        Collections.reverse(solution);
        List<ScriptedTurn> script = new ArrayList<>();
        long at = 1_000_000;
        for (Turn turn : scramble) {
            script.add(new ScriptedTurn(at += STEP_MICROS, turn));
        }
        at += 5_000_000;
        for (Turn turn : solution) {
            script.add(new ScriptedTurn(at += STEP_MICROS, turn));
        }
        return script;
    }

    /** The cube is asked every two seconds, so that many answers come while nothing is turned. */
    private static RecordingPlan plan(VirtualCube cube) {
        return new RecordingPlan(
                        cube.busAddress(),
                        OpenLayout.profile(),
                        OpenLayout.profileText(),
                        new Origin("galley cube", "cook", Hand.LEFT),
                        UNSET,
                        OSLO,
                        new BluetoothCapture.Settings(
                                CentralSettings.usual().withSilenceLimit(Duration.ofSeconds(2)),
                                PipelineSettings.forBoard()))
                .begunAt(UNSET);
    }
}
