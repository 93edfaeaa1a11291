package fermata.decoder.stream;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import fermata.decoder.stream.profile.ProfileReading;
import fermata.decoder.stream.profile.ProfileWriter;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** A face in one byte and degrees in another, up to three new turns a frame, an 8-bit clock of 10 ms, no number. */
class SeveralFieldsTest {
    private static final UUID CHARACTERISTIC = UUID.fromString("0000ab03-0000-1000-8000-00805f9b34fb");

    private static final String JSON = """
            {
              "format": "stream-profile", "version": 1, "name": "several fields",
              "recognise": {"name": "Test .*"},
              "colours": {"U": "#000001", "R": "#000002", "F": "#000003",
                          "D": "#000004", "L": "#000005", "B": "#000006"},
              "subscribe": [{"characteristic": "ab03", "frames": ["turns"]}],
              "frames": {"turns": {
                "kind": "turns", "bytes": 9,
                "clock": {"byte": 0, "tickMicros": 10000},
                "fresh": {"byte": 1},
                "code": [{"byte": 2}, {"byte": 3}],
                "history": {"stride": 16, "entries": 2, "order": "newest-first", "empty": 0,
                            "code": [{"byte": 4}, {"byte": 5}]},
                "turns": {"90": "U", "166": "U'", "346": "R", "422": "R'", "602": "F", "678": "F'",
                          "858": "D", "934": "D'", "1114": "L", "1190": "L'", "1370": "B", "1446": "B'"},
                "checksums": [{"kind": "sum8", "byte": 8, "from": 0, "to": 8, "initial": 7}]
              }}
            }
            """;

    @Test
    void shouldReadAFaceAndItsDegreesAndAllThatIsNewWhenSeveralTurnsComeAtOnce() {
        List<StreamEvent> events = heard(frame(0, "0a 01 015a 0000 0000"), frame(50, "0f 02 02a6 035a 015a"));
        assertThat(turns(events)).containsExactly("R", "D", "F'");
        assertThat(events.stream().filter(TurnsLost.class::isInstance)).isEmpty();
    }

    @Test
    void shouldDropACopyAndKeepTheSameTurnAWholeRoundOfTheClockLater() {
        List<StreamEvent> events = heard(
                frame(0, "0a 01 015a 0000 0000"),
                frame(12, "0a 01 015a 0000 0000"),
                frame(2560, "0a 01 015a 015a 0000"));
        assertThat(turns(events)).containsExactly("R", "R");
    }

    @Test
    void shouldReadBackWhatItWritesWhenAProfileUsesTheNewerMembers() {
        StreamProfile profile = profile();
        String written = ProfileWriter.write(profile);
        assertThat(StreamProfile.parse(written)).isInstanceOfSatisfying(ProfileReading.Usable.class, read -> {
            assertThat(read.profile().subscribe()).isEqualTo(profile.subscribe());
            assertThat(ProfileWriter.write(read.profile())).isEqualTo(written);
        });
    }

    @Test
    void shouldReadBackWhatItWritesWhenAProfileHasAllKindsOfFrames() {
        for (StreamProfile profile : List.of(OpenLayout.profile(), OtherProfile.profile())) {
            assertThat(StreamProfile.parse(ProfileWriter.write(profile)))
                    .isInstanceOfSatisfying(ProfileReading.Usable.class, read -> {
                        assertThat(read.profile().subscribe()).isEqualTo(profile.subscribe());
                        assertThat(read.profile().read()).isEqualTo(profile.read());
                    });
        }
    }

    @Test
    void shouldNameTheCodeWhenItsFieldsHaveASign() {
        String wrong =
                JSON.replace("[{\"byte\": 2}, {\"byte\": 3}]", "[{\"byte\": 2}, {\"byte\": 3, \"signed\": true}]");
        assertThat(StreamProfile.parse(wrong))
                .isInstanceOfSatisfying(
                        ProfileReading.Unusable.class,
                        unusable -> assertThat(unusable.problems())
                                .anySatisfy(
                                        problem -> assertThat(problem.path()).isEqualTo("$.frames.turns.code[1]")));
    }

    private static List<String> turns(List<StreamEvent> events) {
        return events.stream()
                .filter(TurnSensed.class::isInstance)
                .map(event -> ((TurnSensed) event).turn().toString())
                .toList();
    }

    private static RawFrame frame(long millis, String hex) {
        byte[] text = HexFormat.of().parseHex(hex.replace(" ", ""));
        byte[] bytes = new byte[9];
        int sum = 7;
        for (int i = 0; i < text.length; i++) {
            bytes[i] = text[i];
            sum += text[i];
        }
        bytes[8] = (byte) sum;
        return new RawFrame(0, CHARACTERISTIC, millis * 1_000_000, bytes);
    }

    private static List<StreamEvent> heard(RawFrame... frames) {
        List<StreamEvent> events = new ArrayList<>(new StreamDecoder(profile()).accept(List.of(frames)));
        assertThat(events.stream().filter(StreamEvent.FrameRejected.class::isInstance))
                .isEmpty();
        return events;
    }

    private static StreamProfile profile() {
        ProfileReading reading = StreamProfile.parse(JSON);
        if (reading instanceof ProfileReading.Usable usable) {
            return usable.profile();
        }
        throw new AssertionError(reading.toString());
    }
}
