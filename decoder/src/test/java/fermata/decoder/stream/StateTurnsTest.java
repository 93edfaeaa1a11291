package fermata.decoder.stream;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.StreamEvent.TurnSensed;
import fermata.decoder.stream.StreamEvent.TurnsLost;
import fermata.decoder.stream.profile.ProfileReading;
import fermata.decoder.stream.profile.StreamProfile;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A device that sends 54 letters of its state, a byte each, and nothing else. */
class StateTurnsTest {
    private static final UUID CHARACTERISTIC = UUID.fromString("0000ab02-0000-1000-8000-00805f9b34fb");

    private static final String JSON = """
            {
              "format": "stream-profile", "version": 1, "name": "states alone",
              "recognise": {"name": "Test .*"}, "bonding": "required",
              "colours": {"U": "#000001", "R": "#000002", "F": "#000003",
                          "D": "#000004", "L": "#000005", "B": "#000006"},
              "subscribe": [{"characteristic": "ab02", "frames": ["whole", "noise"]}],
              "frames": {
                "whole": {"kind": "state", "bytes": 54,
                          "stickers": {"byte": 0, "centres": true, "faces": "URFDLB",
                                       "colours": {"85": "U", "82": "R", "70": "F", "68": "D", "76": "L", "66": "B"}}},
                "noise": {"kind": "other", "bytes": 3}
              }
            }
            """;

    @Test
    void shouldHearOneTurnWhenTwoStatesAreOneTurnApart() {
        List<TurnSensed> turns = turns(heard("", "R", "R U2", "R U2 D'"));
        assertThat(turns).extracting(t -> t.turn().toString()).containsExactly("R", "U2", "D'");
        assertThat(turns).extracting(TurnSensed::source).containsOnly(TurnSource.HEARD);
    }

    @Test
    void shouldHearBothTurnsOfOneAxisWhenAStateBetweenThemWasLost() {
        List<TurnSensed> turns = turns(heard("", "R L'"));
        assertThat(turns).extracting(t -> t.turn().toString()).containsExactly("R", "L'");
        assertThat(turns).extracting(TurnSensed::source).containsOnly(TurnSource.HEARD);
    }

    @Test
    void shouldRepairTheOnlyShortestAnswerWhenUpToThreeStatesWereLost() {
        List<TurnSensed> turns = turns(heard("", "R U F2 L"));
        assertThat(turns).extracting(t -> t.turn().toString()).containsExactly("R", "U", "F2", "L");
        assertThat(turns).extracting(TurnSensed::source).containsOnly(TurnSource.REPAIRED);
    }

    @Test
    void shouldLeaveAGapWhenManyTurnsLieBetweenTwoStates() {
        List<StreamEvent> events = heard("", "R U F2 L D B' R2 U'", "R U F2 L D B' R2 U' F");
        assertThat(events.stream().filter(TurnsLost.class::isInstance)).hasSize(1);
        assertThat(turns(events)).extracting(t -> t.turn().toString()).containsExactly("F");
    }

    /** R2 F2 R2 F2 R2 F2 and F2 R2 F2 R2 F2 R2 meet after six turns; three and three differ from solved alike. */
    @Test
    void shouldLeaveAGapWhenSeveralShortestAnswersExist() {
        CubeState from = state("R2 F2 R2");
        CubeState to =
                from.apply(Stream.of("F2 R2 F2".split(" ")).map(Turn::parse).toList());
        assertThat(StateDifference.between(CubeState.SOLVED, to)).isEmpty();
        assertThat(StateDifference.between(CubeState.SOLVED, state("R U R' U'")))
                .isPresent();
    }

    @Test
    void shouldSayNothingNewWhenTheSameStateComesAgain() {
        assertThat(turns(heard("R", "R", "R"))).isEmpty();
    }

    private static List<TurnSensed> turns(List<StreamEvent> events) {
        return events.stream()
                .filter(TurnSensed.class::isInstance)
                .map(TurnSensed.class::cast)
                .toList();
    }

    private static CubeState state(String turns) {
        return turns.isEmpty()
                ? CubeState.SOLVED
                : CubeState.SOLVED.apply(
                        Stream.of(turns.split(" ")).map(Turn::parse).toList());
    }

    private static List<StreamEvent> heard(String... states) {
        ProfileReading reading = StreamProfile.parse(JSON);
        assertThat(reading).isInstanceOf(ProfileReading.Usable.class);
        StreamDecoder decoder = new StreamDecoder(((ProfileReading.Usable) reading).profile());
        List<RawFrame> frames = new ArrayList<>();
        for (int i = 0; i < states.length; i++) {
            byte[] bytes = state(states[i]).facelets().getBytes(java.nio.charset.StandardCharsets.US_ASCII);
            frames.add(new RawFrame(0, CHARACTERISTIC, 1_000_000_000L * i, bytes));
        }
        frames.add(new RawFrame(0, CHARACTERISTIC, 1_000_000_000L * states.length, new byte[3]));
        List<StreamEvent> events = decoder.accept(frames);
        assertThat(events.stream().filter(StreamEvent.FrameRejected.class::isInstance))
                .isEmpty();
        return events;
    }
}
