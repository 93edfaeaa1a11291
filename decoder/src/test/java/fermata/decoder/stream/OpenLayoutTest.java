package fermata.decoder.stream;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Quaternion;
import fermata.decoder.stream.FrameReading.BatteryFrame;
import fermata.decoder.stream.FrameReading.OrientationFrame;
import fermata.decoder.stream.FrameReading.StateFrame;
import fermata.decoder.stream.FrameReading.TurnsFrame;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OpenLayoutTest {
    private final FrameReader reader = new FrameReader(OpenLayout.profile());

    @Test
    void shouldReadTheFrameWorkedOutInTheDocumentation() {
        byte[] frame =
                OpenLayout.encodeTurns(258, 1, List.of(made("U'", 66_000), made("F2", 70_000), made("R", 70_125)));

        assertThat(HexFormat.of().formatHex(frame, 0, 19))
                .isEqualTo("d40201ed1101002103" + "a70f" + "e2ff" + "000000000000");
        assertThat(frame[19]).isEqualTo((byte) 0x74);
        TurnsFrame read = (TurnsFrame) reader.read(OpenLayout.TURNS, frame);
        assertThat(read.turns())
                .extracting(FrameTurn::turn)
                .containsExactly(Turn.parse("U'"), Turn.parse("F2"), Turn.parse("R"));
        assertThat(read.turns()).extracting(t -> t.ticks().getAsLong()).containsExactly(67_953L, 70_000L, 70_125L);
        assertThat(read.turns()).extracting(FrameTurn::ticksAreBound).containsExactly(true, false, false);
        assertThat(read.fresh()).isEqualTo(1);
    }

    /** After R corners URF UBR DFR DRB hold DFR URF DRB UBR, twisted 2 1 1 2; edges UR DR FR BR hold FR BR DR UR. */
    @Test
    void shouldPackTheStateWorkedOutInTheDocumentation() {
        byte[] value = OpenLayout.encodeState(1, 5000, CubeState.SOLVED.apply(Turn.parse("R")));

        assertThat(HexFormat.of().formatHex(value))
                .isEqualTo("ae" + "0100" + "88130000" + "8cf07a" + "4281" + "18325b76940a" + "0000" + "52");
    }

    /** Lying on F, U towards the viewer: sensor x stays, y (out of B) points up, z (out of U) south: +90 about x. */
    @Test
    void shouldReadTheOrientationWorkedOutInTheDocumentation() {
        byte[] frame = OpenLayout.encodeOrientation(70_125, new Quaternion(Math.sqrt(0.5), Math.sqrt(0.5), 0, 0));

        assertThat(HexFormat.of().formatHex(frame))
                .isEqualTo("c5" + "ed110100" + "412d" + "412d" + "0000" + "0000" + "45");
        OrientationFrame read = (OrientationFrame) reader.read(OpenLayout.ORIENTATION, frame);
        assertThat(read.ticks()).hasValue(70_125);
        // Right-hand rule: +90 about x takes y (out of U) to z (towards the viewer) and z (out of F) to -y (down).
        assertThat(read.attitude().angleTo(Quaternion.about(1, 0, 0, Math.PI / 2)))
                .isLessThan(1e-3);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void shouldReadBackWhatWasEncodedWhenTurnsAreRandom(long seed) {
        Random random = new Random(seed);
        for (int round = 0; round < 500; round++) {
            List<MadeTurn> turns = new ArrayList<>();
            long at = random.nextLong(1L << 40);
            int count = 1 + random.nextInt(9);
            for (int i = 0; i < count; i++) {
                at += random.nextInt(2047);
                turns.add(new MadeTurn(Turn.ofIndex(random.nextInt(18)), at));
            }
            long sequence = random.nextLong(1L << 40);
            int sent = Math.min(6, count);
            int fresh = random.nextInt(sent + 1);

            TurnsFrame read =
                    (TurnsFrame) reader.read(OpenLayout.TURNS, OpenLayout.encodeTurns(sequence, fresh, turns));

            assertThat(read.fresh()).isEqualTo(fresh);
            assertThat(read.sequence()).hasValue(sequence & 0xFFFF);
            assertThat(read.turns()).hasSize(sent);
            for (int i = 0; i < sent; i++) {
                MadeTurn made = turns.get(count - sent + i);
                FrameTurn got = read.turns().get(i);
                assertThat(got.turn()).isEqualTo(made.turn());
                assertThat(got.ticks()).hasValue(made.deviceMillis() & 0xFFFF_FFFFL);
                assertThat(got.sequence()).hasValue(sequence - (sent - 1 - i) & 0xFFFF);
                assertThat(got.ticksAreBound()).isFalse();
            }
        }
    }

    @Test
    void shouldReadBackTheStateWhenTurnsAreRandom() {
        Random random = new Random(7);
        CubeState state = CubeState.SOLVED;
        for (int i = 0; i < 1000; i++) {
            state = state.apply(Turn.ofIndex(random.nextInt(18)));

            StateFrame read = (StateFrame) reader.read(OpenLayout.STATE, OpenLayout.encodeState(i, 1000L * i, state));

            assertThat(read.state()).isEqualTo(state);
            assertThat(read.sequence()).hasValue(i);
            assertThat(read.ticks()).hasValue(1000L * i);
        }
    }

    @Test
    void shouldReadBackTheBatteryAndRefuseMoreThanFull() {
        assertThat(reader.read(OpenLayout.BATTERY_LEVEL, OpenLayout.encodeBattery(37)))
                .isEqualTo(new BatteryFrame(37));
        assertThatThrownBy(() -> OpenLayout.encodeBattery(101)).hasMessageContaining("101");
        assertThat(reader.read(OpenLayout.BATTERY_LEVEL, new byte[] {101}).toString())
                .contains("0..100");
    }

    @Test
    void shouldRefuseToAnnounceMoreTurnsThanThereAre() {
        assertThatThrownBy(() -> OpenLayout.encodeTurns(1, 2, List.of(made("R", 5))))
                .hasMessageContaining("fresh 2 of 1");
    }

    private static MadeTurn made(String turn, long millis) {
        return new MadeTurn(Turn.parse(turn), millis);
    }
}
