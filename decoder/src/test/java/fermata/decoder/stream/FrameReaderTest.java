package fermata.decoder.stream;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.FrameReading.Broken;
import fermata.decoder.stream.FrameReading.Ignored;
import fermata.decoder.stream.FrameReading.StateFrame;
import fermata.decoder.stream.FrameReading.TurnsFrame;
import fermata.decoder.stream.OpenLayout.MadeTurn;
import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitWriter;
import fermata.decoder.stream.profile.Checksum;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalLong;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FrameReaderTest {
    private final FrameReader open = new FrameReader(OpenLayout.profile());
    private final FrameReader other = new FrameReader(OtherProfile.profile());
    private final byte[] good = OpenLayout.encodeTurns(
            9, 1, List.of(new MadeTurn(Turn.parse("R"), 1000), new MadeTurn(Turn.parse("U"), 1200)));

    @Test
    void shouldSayThatAFrameIsTooShortOrTooLong() {
        assertThat(fault(Arrays.copyOf(good, 19)).message())
                .isEqualTo("turns.bytes at byte 19 is a frame of 19 bytes, expected at least 20 bytes");
        assertThat(fault(Arrays.copyOf(good, 19)).kind()).isEqualTo(FrameFault.Kind.TRUNCATED);
        assertThat(fault(new byte[0]).kind()).isEqualTo(FrameFault.Kind.TRUNCATED);
        assertThat(fault(Arrays.copyOf(good, 21)).kind()).isEqualTo(FrameFault.Kind.TOO_LONG);
    }

    @Test
    void shouldNameTheConstantThatIsWrong() {
        byte[] frame = good.clone();
        frame[0] = 17;

        assertThat(fault(frame).message()).isEqualTo("turns.constants[0] at byte 0 is 17, expected 212");
    }

    @Test
    void shouldGiveBothSumsWhenACheckFails() {
        byte[] frame = good.clone();
        frame[19] ^= 1;

        FrameFault fault = fault(frame);

        assertThat(fault.kind()).isEqualTo(FrameFault.Kind.WRONG_CHECKSUM);
        assertThat(fault.offset()).isEqualTo(19);
        assertThat(fault.value()).isEqualTo("0x" + Integer.toHexString(frame[19] & 0xFF));
        assertThat(fault.expected()).startsWith("0x" + Integer.toHexString(good[19] & 0xFF));
    }

    @Test
    void shouldNameTheTurnCodeThatIsUnknownWhereverItStands() {
        assertThat(fault(resealed(8, 18)).message())
                .isEqualTo("turns.code at byte 8 is 18, expected a code of the profile's table of turns");
        assertThat(fault(resealed(9, 31)).message()).startsWith("turns.history.code[0] at byte 9 is 31");
    }

    @Test
    void shouldRefuseCountsThatTheFrameCannotHold() {
        assertThat(fault(resealed(7, 0x61)).message()).startsWith("turns.history.count at byte 7 is 6");
        assertThat(fault(resealed(7, 0x13)).message())
                .isEqualTo("turns.fresh at byte 7 is 3, expected at most the 2 turns of the frame");
    }

    @Test
    void shouldNameThePieceThatIsImpossibleInAState() {
        byte[] twisted = OpenLayout.encodeState(0, 0, CubeState.SOLVED);
        twisted[10] |= 3;
        byte[] doubled = OpenLayout.encodeState(0, 0, CubeState.SOLVED);
        doubled[7] |= 1;

        assertThat(stateFault(twisted).message())
                .isEqualTo("state.cubies.cornerTwists[0] at byte 10 is 3, expected 0..2");
        assertThat(stateFault(doubled).kind()).isEqualTo(FrameFault.Kind.UNKNOWN_STATE);
        assertThat(stateFault(doubled).expected()).contains("each piece once");
    }

    @Test
    void shouldLeaveAloneWhatTheProfileDoesNotName() {
        assertThat(open.read(new UUID(1, 2), good)).isInstanceOf(Ignored.class);
        assertThat(other.read(OtherProfile.NOTIFY, new byte[20])).isInstanceOf(Ignored.class);
    }

    @Test
    void shouldReadAbsoluteTimesOldestFirstWithTheCheckAtTheEnd() {
        ByteBuffer frame = ByteBuffer.allocate(14);
        frame.put((byte) (1 << 5 | 1))
                .put((byte) 0x12)
                .putShort((short) 0x0010)
                .put((byte) -6)
                .put((byte) 2);
        frame.put((byte) 2).putShort((short) 0xFFF0).put((byte) -1).putShort((short) 0x0008);
        BitField place = new BitField(0, 16, BitField.Order.BIG, false);
        Checksum crc = new Checksum(Checksum.Kind.CRC_16, place, 0, 0, -2, new Checksum.Crc(0x1021, 0xFFFF, false, 0));
        frame.putShort((short) crc.compute(frame.array()));

        TurnsFrame read = (TurnsFrame) other.read(OtherProfile.NOTIFY, frame.array());

        assertThat(read.turns().toString())
                .isEqualTo(List.of(turn("R", 31, 0x11FFF0), turn("U'", 0, 0x120008), turn("B'", 1, 0x120010))
                        .toString());
    }

    @Test
    void shouldReadStickersInAnyOrderOfFaces() {
        CubeState state = CubeState.SOLVED;
        Random random = new Random(11);
        for (int i = 0; i < 40; i++) {
            state = state.apply(Turn.ofIndex(random.nextInt(18)));
        }
        byte[] frame = new byte[20];
        frame[0] = 2;
        int at = 8;
        for (char face : "FRUBLD".toCharArray()) {
            for (int place = 0; place < 9; place++) {
                char colour = state.facelets().charAt(9 * "URFDLB".indexOf(face) + place);
                if (place != 4) {
                    BitField sticker = new BitField(at, 3, BitField.Order.BIG, false);
                    BitWriter.write(sticker, frame, 1 + "URFDLB".indexOf(colour));
                    at += 3;
                }
            }
        }
        for (int i = 0; i < 19; i++) {
            frame[19] ^= frame[i];
        }

        assertThat(((StateFrame) other.read(OtherProfile.NOTIFY, frame)).state())
                .isEqualTo(state);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void shouldNeverThrowWhenBytesAreRandom(long seed) {
        Random random = new Random(seed);
        UUID[] all = {OpenLayout.TURNS, OpenLayout.STATE, OpenLayout.BATTERY_LEVEL};
        int readable = 0;
        for (int round = 0; round < 30_000; round++) {
            byte[] frame = new byte[random.nextInt(24)];
            random.nextBytes(frame);
            if (frame.length > 0 && random.nextBoolean()) {
                frame[0] = (byte) (random.nextBoolean() ? 0xD4 : 0xAE);
                // Half of them get past the check, to reach what lies behind it.
                frame = frame.length >= 20 && random.nextBoolean() ? sealedOpen(Arrays.copyOf(frame, 20)) : frame;
            }
            FrameReading reading = open.read(all[random.nextInt(3)], frame);
            readable += reading instanceof TurnsFrame ? 1 : 0;
            assertThat(other.read(OtherProfile.NOTIFY, frame)).isNotNull();
        }
        assertThat(readable).as("some must get through").isPositive();
    }

    /** A CRC-8 finds every error burst of up to 8 bits: Peterson and Brown 1961, "Cyclic codes for error detection". */
    @Test
    void shouldCatchEveryBurstOfUpToEightBits() {
        for (int from = 0; from < 20 * 8; from++) {
            for (int pattern = 1; pattern < 256; pattern += 2) {
                byte[] frame = good.clone();
                for (int bit = 0; bit < 8 && from + bit < 160; bit++) {
                    frame[(from + bit) / 8] ^= (byte) ((pattern >> bit & 1) << 7 - (from + bit) % 8);
                }
                assertThat(open.read(OpenLayout.TURNS, frame)).isInstanceOf(Broken.class);
            }
        }
    }

    private static FrameTurn turn(String turn, long sequence, long ticks) {
        return new FrameTurn(Turn.parse(turn), OptionalLong.of(sequence), OptionalLong.of(ticks), false);
    }

    private FrameFault fault(byte[] frame) {
        return ((Broken) open.read(OpenLayout.TURNS, frame)).fault();
    }

    private FrameFault stateFault(byte[] value) {
        return ((Broken) open.read(OpenLayout.STATE, sealedOpen(value))).fault();
    }

    private byte[] resealed(int at, int value) {
        byte[] frame = good.clone();
        frame[at] = (byte) value;
        return sealedOpen(frame);
    }

    private static byte[] sealedOpen(byte[] frame) {
        BitField place = new BitField(0, 8, BitField.Order.BIG, false);
        Checksum crc = new Checksum(Checksum.Kind.CRC_8, place, 0, 0, -1, new Checksum.Crc(7, 255, false, 0));
        frame[frame.length - 1] = (byte) crc.compute(frame);
        return frame;
    }
}
