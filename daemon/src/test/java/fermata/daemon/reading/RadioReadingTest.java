package fermata.daemon.reading;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.DroppedFrames;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.store.CaptureJournal;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.telling.Exporter;
import fermata.daemon.telling.Importer;
import fermata.daemon.turnfile.TurnStream;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.OpenLayout;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Frames of the open layout, good and bad, through the store to events. Turns are made every 300 ms. */
class RadioReadingTest {
    private static final long START_NANOS = 5_000_000_000L;
    private static final long FIRST_MILLIS = 2_000;
    private static final long STEP_MILLIS = 300;
    private static final int LAYOUT_TURNS = 18;

    private static final String BARE = """
            {"format": "stream-profile", "version": 1, "name": "One byte a turn",
             "recognise": {"name": "galley"},
             "colours": {"U": "#ffffff", "R": "#ff0000", "F": "#00ff00", "D": "#ffff00", "L": "#ff8800",
              "B": "#0000ff"},
             "subscribe": [{"characteristic": "b3cb4267-3d05-43d3-a261-fbfdfbcd347f", "frames": ["turns"]}],
             "frames": {"turns": {"kind": "turns", "bytes": 1, "code": {"byte": 0, "bits": 8}, "turns": {
               "0": "U", "1": "U'", "3": "R", "4": "R'", "6": "F", "7": "F'",
               "9": "D", "10": "D'", "12": "L", "13": "L'", "15": "B", "16": "B'"}}}}
            """;

    @TempDir
    Path directory;

    private Store store;
    private CaptureJournal journal;
    private final List<MadeTurn> made = new ArrayList<>();
    private long ordinal;

    @BeforeEach
    void setUp() {
        store = Store.openForWriting(new Home(directory), LocalDateTime::now);
        begin(OpenLayout.profileText());
    }

    private void begin(String profile) {
        CaptureStart start = new CaptureStart(
                new UUID(1, profile.hashCode()),
                "boot",
                Instant.parse("2026-11-24T20:00:00Z"),
                START_NANOS,
                ZoneId.of("Europe/Oslo"),
                new Origin("galley cube", "cook", Hand.LEFT),
                "radio");
        journal = store.captures().begin(start, profile, "");
    }

    @AfterEach
    void tearDown() {
        store.close();
    }

    @Test
    void shouldHearEveryTurnWithItsTimeSinceTheCaptureBegan() {
        turnAndSend(10);

        CaptureReading reading = read();

        assertThat(reading.tally()).isEqualTo(new Tally(10, 0, 0, 0, 0, 0));
        List<Event.Turned> turns = reading.log().turns();
        assertThat(turns).extracting(Event.Turned::turn).containsExactlyElementsOf(turnsMade());
        for (int i = 0; i < turns.size(); i++) {
            // The frames arrive without delay, so the fitted line gives back the device's own times.
            assertThat(turns.get(i).atMicros()).isEqualTo((FIRST_MILLIS + i * STEP_MILLIS) * 1000);
        }
    }

    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void shouldKnowItsOwnExportAndNothingElse(boolean withNames) {
        turnAndSend(10);
        CaptureRow capture = store.captures().all().get(0);
        TurnStream export = new Exporter(store).stream(capture, withNames);
        Importer importer = new Importer(store, Clock.systemUTC());

        assertThat(importer.add("export", List.of(export).iterator()))
                .isEqualTo(new Importer.Imported(List.of(), 0, List.of(capture.id())));
        TurnStream begins = new TurnStream(export.header(), export.events().subList(0, 9));
        assertThat(importer.add("export", List.of(begins).iterator()))
                .isEqualTo(new Importer.Imported(List.of(capture.id() + 1), 9, List.of()));
    }

    @Test
    void shouldCountATruncatedFrameAndRepairItsTurnFromTheNext() {
        turnAndSend(5);
        byte[] frame = turn();
        send(OpenLayout.TURNS, Arrays.copyOf(frame, 13));
        turnAndSend(5);

        CaptureReading reading = read();

        assertThat(reading.tally()).isEqualTo(new Tally(10, 1, 0, 0, 1, 0));
        assertThat(reading.log().turns()).extracting(Event.Turned::turn).containsExactlyElementsOf(turnsMade());
        assertThat(store.captures().frames(journal.captureId())).hasSize(11);
    }

    @Test
    void shouldCountAFrameWithAnUnknownTurnCode() {
        turnAndSend(5);
        byte[] frame = turn();
        frame[8] = LAYOUT_TURNS;
        send(OpenLayout.TURNS, sealed(frame));
        turnAndSend(5);

        CaptureReading reading = read();

        assertThat(reading.tally()).isEqualTo(new Tally(10, 1, 0, 0, 1, 0));
        assertThat(reading.log().turns()).extracting(Event.Turned::turn).containsExactlyElementsOf(turnsMade());
    }

    /** Turns without a number: what this machine had no room for can be seen by nobody else. */
    @ParameterizedTest
    @CsvSource({"0, 0, 2", "1, 1, 2", "2, 2, 2"})
    void shouldOpenAGapWhereFramesWereDroppedUnnumbered(int turnsBefore, int gapAt, int turns) {
        begin(BARE);
        UUID characteristic = UUID.fromString("b3cb4267-3d05-43d3-a261-fbfdfbcd347f");
        for (int turn = 0; turn <= turns; turn++) {
            long at = START_NANOS + (turn + 1) * 1_000_000_000L;
            if (turn == turnsBefore) {
                journal.append(List.of(new DroppedFrames(1, ordinal++, at, 3)));
            }
            if (turn < turns) {
                journal.append(
                        List.of(new HeardFrame(1, ordinal++, characteristic.toString(), at + 1, new byte[] {3})));
            }
        }

        CaptureReading reading = read();

        assertThat(reading.tally()).isEqualTo(new Tally(turns, 0, 0, 1, 0, 0));
        assertThat(reading.log().events().get(gapAt)).isInstanceOf(Event.Gap.class);
    }

    @Test
    void shouldLeaveAnImpossibleStateOutAndCountIt() {
        CubeState twisted = CubeState.ofCubies(
                new int[] {0, 1, 2, 3, 4, 5, 6, 7},
                new int[] {1, 0, 0, 0, 0, 0, 0, 0},
                new int[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11},
                new int[12]);
        turnAndSend(3);
        send(OpenLayout.STATE, OpenLayout.encodeState(made.size(), deviceMillis(), twisted));
        turnAndSend(3);

        CaptureReading reading = read();

        assertThat(reading.tally()).isEqualTo(new Tally(6, 0, 0, 0, 0, 1));
        assertThat(reading.log().events()).noneMatch(Event.Snapshot.class::isInstance);
    }

    @Test
    void shouldPutAStateExactlyBetweenTheTurnsItContainsAndTheOthers() {
        turnAndSend(4);
        CubeState afterFour = CubeState.SOLVED.apply(turnsMade());
        byte[] state = OpenLayout.encodeState(4, deviceMillis(), afterFour);
        turnAndSend(2);
        send(OpenLayout.STATE, state);
        turnAndSend(1);

        List<Event> events = read().log().events();

        assertThat(events.get(4))
                .isInstanceOfSatisfying(
                        Event.Snapshot.class,
                        snapshot -> assertThat(snapshot.state()).isEqualTo(afterFour));
        assertTimesNeverFall(events);
    }

    /** The first ten of nineteen turns are heard but for the fourth to the seventh. */
    @Test
    void shouldPutALateStateBeforeTheLostTurnsThatItDoesNotContain() {
        byte[] afterThree = loseFourAfterThree(3);
        turnAndSend(5);
        send(OpenLayout.STATE, afterThree);

        List<Event> events = read().log().events();

        assertThat(events.subList(0, 3)).allMatch(Event.Turned.class::isInstance);
        assertThat(events.get(3))
                .isInstanceOfSatisfying(
                        Event.Snapshot.class,
                        snapshot -> assertThat(snapshot.state()).isEqualTo(stateAfter(3)));
        assertThat(events.get(4))
                .isInstanceOfSatisfying(
                        Event.Gap.class, gap -> assertThat(gap.turnsLost()).isEqualTo(4));
        assertTimesNeverFall(events);
    }

    /** It contains two of the four. Frames behind the loss wait for what may still come, so it may be early. */
    @ParameterizedTest
    @ValueSource(ints = {0, 5})
    void shouldCutTheGapInTwoWhenAStateContainsSomeOfTheLostTurns(int turnsBefore) {
        byte[] afterFive = loseFourAfterThree(5);
        turnAndSend(turnsBefore);
        send(OpenLayout.STATE, afterFive);
        turnAndSend(5);

        CaptureReading reading = read();

        assertThat(reading.tally()).isEqualTo(new Tally(10 + turnsBefore, 5, 4, 0, 0, 0));
        List<Event> events = reading.log().events();
        assertThat(events.subList(3, 6))
                .extracting(event -> event instanceof Event.Gap gap ? gap.turnsLost() : 0)
                .containsExactly(2, 0, 2);
        assertThat(events.get(4))
                .isInstanceOfSatisfying(
                        Event.Snapshot.class,
                        snapshot -> assertThat(snapshot.state()).isEqualTo(stateAfter(5)));
        assertTimesNeverFall(events);
    }

    /** Gives the frame that told the state after so many turns. */
    private byte[] loseFourAfterThree(int turnsContained) {
        turnAndSend(3);
        byte[] state = new byte[0];
        for (int turn = 4; turn <= 12; turn++) {
            turn();
            state = turn == Math.max(4, turnsContained)
                    ? OpenLayout.encodeState(turnsContained, deviceMillis(), stateAfter(turnsContained))
                    : state;
        }
        turnAndSend(2);
        return state;
    }

    private CubeState stateAfter(int turns) {
        return CubeState.SOLVED.apply(turnsMade().subList(0, turns));
    }

    @Test
    void shouldRecordAGapWithItsCountWhenMoreIsLostThanAFrameRepeats() {
        turnAndSend(3);
        for (int i = 0; i < 9; i++) {
            turn();
        }
        turnAndSend(2);

        CaptureReading reading = read();

        // A frame holds six turns, so that of nine lost ones five come back and four are gone.
        assertThat(reading.tally()).isEqualTo(new Tally(5, 5, 4, 0, 0, 0));
        assertThat(reading.log().events().get(3))
                .isInstanceOfSatisfying(
                        Event.Gap.class, gap -> assertThat(gap.turnsLost()).isEqualTo(4));
        assertTimesNeverFall(reading.log().events());
    }

    /** A cube with a motion sensor: a sample every 10 ms from the first turn on, so 30 between two turns. */
    @Test
    void shouldPutThinnedSamplesBetweenTheTurnsByTheirOwnTime() {
        // The sensor's z is our y.
        Quaternion turnedRound = Quaternion.about(0, 0, 1, Math.PI / 2);
        for (int i = 0; i < 10; i++) {
            send(OpenLayout.TURNS, turn());
            for (int sample = 1; sample < 30; sample++) {
                // Its frame comes with the turn before it, its clock says when it was taken.
                send(OpenLayout.ORIENTATION, OpenLayout.encodeOrientation(deviceMillis() + 10 * sample, turnedRound));
            }
        }

        CaptureReading reading = read();

        List<Event> events = reading.log().events();
        assertThat(reading.tally()).isEqualTo(new Tally(10, 0, 0, 0, 0, 0));
        assertTimesNeverFall(events);
        List<Long> between = events.stream()
                .filter(Event.Oriented.class::isInstance)
                .map(event -> (event.atMicros() / 1000 - FIRST_MILLIS) % STEP_MILLIS)
                .limit(7)
                .toList();
        assertThat(between).containsExactly(10L, 60L, 110L, 160L, 210L, 260L, 290L);
        assertThat(events)
                .filteredOn(Event.Oriented.class::isInstance)
                .hasSize(70)
                .allSatisfy(event -> assertThat(
                                ((Event.Oriented) event).attitude().angleTo(Quaternion.about(0, 1, 0, Math.PI / 2)))
                        .isLessThan(1e-3));
    }

    private static void assertTimesNeverFall(List<Event> events) {
        long latest = 0;
        for (Event event : events) {
            assertThat(event.atMicros()).isGreaterThanOrEqualTo(latest);
            latest = event.atMicros();
        }
    }

    private CaptureReading read() {
        return new CaptureReader(store.captures())
                .read(store.captures().find(journal.captureId()).orElseThrow());
    }

    private void turnAndSend(int turns) {
        for (int i = 0; i < turns; i++) {
            send(OpenLayout.TURNS, turn());
        }
    }

    /** Makes the next turn and gives the frame that announces it. */
    private byte[] turn() {
        made.add(new MadeTurn(Turn.ofIndex(made.size() * 7 % LAYOUT_TURNS), FIRST_MILLIS + made.size() * STEP_MILLIS));
        return OpenLayout.encodeTurns(made.size(), 1, made);
    }

    private void send(UUID characteristic, byte[] bytes) {
        long arrival = START_NANOS + deviceMillis() * 1_000_000;
        List<CapturedItem> items = List.of(new HeardFrame(1, ordinal++, characteristic.toString(), arrival, bytes));
        journal.append(items);
    }

    private long deviceMillis() {
        return made.get(made.size() - 1).deviceMillis();
    }

    private List<Turn> turnsMade() {
        return made.stream().map(MadeTurn::turn).toList();
    }

    /** Puts the right CRC-8 (0x07 from 0xFF, docs/stream-profile.md) at the end. */
    private static byte[] sealed(byte[] frame) {
        int register = 0xFF;
        for (int i = 0; i < frame.length - 1; i++) {
            register ^= frame[i] & 0xFF;
            for (int bit = 0; bit < 8; bit++) {
                register = (register & 0x80) != 0 ? (register << 1 ^ 0x07) & 0xFF : register << 1;
            }
        }
        frame[frame.length - 1] = (byte) register;
        return frame;
    }
}
