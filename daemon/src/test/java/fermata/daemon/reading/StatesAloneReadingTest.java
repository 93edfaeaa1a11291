package fermata.daemon.reading;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.store.CaptureJournal;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.turnfile.StreamClock;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A cube that sends nothing but its whole state and its clock, through the store to events. */
class StatesAloneReadingTest {
    private static final String CHARACTERISTIC = "b3cb4267-3d05-43d3-a261-fbfdfbcd347f";
    private static final long START_NANOS = 5_000_000_000L;
    private static final int FIRST_MILLIS = 2_000;
    private static final int STEP_MILLIS = 300;

    private static final String PROFILE = """
            {"format": "stream-profile", "version": 1, "name": "States alone",
             "recognise": {"name": "galley"},
             "colours": {"U": "#ffffff", "R": "#ff0000", "F": "#00ff00", "D": "#ffff00", "L": "#ff8800",
              "B": "#0000ff"},
             "subscribe": [{"characteristic": "b3cb4267-3d05-43d3-a261-fbfdfbcd347f", "frames": ["whole"]}],
             "frames": {"whole": {"kind": "state", "bytes": 56,
               "clock": {"byte": 54, "bits": 16, "tickMicros": 1000},
               "stickers": {"byte": 0, "centres": true, "faces": "URFDLB",
                 "colours": {"85": "U", "82": "R", "70": "F", "68": "D", "76": "L", "66": "B"}}}}}
            """;

    @TempDir
    Path directory;

    @Test
    void shouldTimeTurnsByTheDeviceWhenStatesAloneTellOfThem() {
        List<Turn> made =
                Stream.of("R U R' U' F2 L D' B".split(" ")).map(Turn::parse).toList();
        try (Store store = Store.openForWriting(new Home(directory), LocalDateTime::now)) {
            CaptureStart start = new CaptureStart(
                    new UUID(1, 2),
                    "boot",
                    Instant.parse("2026-11-24T20:00:00Z"),
                    START_NANOS,
                    ZoneId.of("Europe/Oslo"),
                    new Origin("galley cube", "cook", Hand.LEFT),
                    "radio");
            CaptureJournal journal = store.captures().begin(start, PROFILE, "");
            CubeState state = CubeState.SOLVED;
            send(journal, 0, state);
            for (int i = 0; i < made.size(); i++) {
                state = state.apply(made.get(i));
                send(journal, i + 1, state);
            }

            CaptureReading reading = new CaptureReader(store.captures())
                    .read(store.captures().find(journal.captureId()).orElseThrow());

            assertThat(reading.tally()).isEqualTo(new Tally(made.size(), 0, 0, 0, 0, 0));
            assertThat(reading.clock()).isEqualTo(StreamClock.DEVICE);
            List<Event.Turned> turns = reading.log().turns();
            assertThat(turns).extracting(Event.Turned::turn).containsExactlyElementsOf(made);
            for (int i = 1; i < turns.size(); i++) {
                // Every other state came 20 ms late; the device's own clock knows better.
                assertThat(turns.get(i).atMicros() - turns.get(i - 1).atMicros())
                        .isEqualTo(STEP_MILLIS * 1000L);
            }
        }
    }

    private static void send(CaptureJournal journal, int index, CubeState state) {
        int deviceMillis = FIRST_MILLIS + index * STEP_MILLIS;
        byte[] frame = Arrays.copyOf(state.facelets().getBytes(StandardCharsets.US_ASCII), 56);
        frame[54] = (byte) deviceMillis;
        frame[55] = (byte) (deviceMillis >> 8);
        long arrivalNanos = START_NANOS + (deviceMillis + index % 2 * 20L) * 1_000_000;
        journal.append(List.of(new HeardFrame(1, index, CHARACTERISTIC, arrivalNanos, frame)));
    }
}
