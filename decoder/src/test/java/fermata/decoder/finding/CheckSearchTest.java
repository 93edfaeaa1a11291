package fermata.decoder.finding;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.stream.profile.BitField;
import fermata.decoder.stream.profile.BitField.Order;
import fermata.decoder.stream.profile.Checksum;
import fermata.decoder.stream.profile.Checksum.Crc;
import fermata.decoder.stream.profile.Checksum.Kind;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Parameters and check values of '123456789' as in the catalogue of parametrised CRC algorithms (Greg Cook, "Catalogue
 * of parametrised CRC algorithms"): what is solved from frames must give them, though it was told none.
 */
class CheckSearchTest {
    private static final int DIGITS = 9;

    @ParameterizedTest
    @CsvSource({
        "CRC_8, 0x07, 0x00, false, 0x00, 0xF4", // SMBUS
        "CRC_8, 0x31, 0x00, true, 0x00, 0xA1", // MAXIM-DOW
        "CRC_8, 0x1D, 0xFF, false, 0xFF, 0x4B", // SAE-J1850
        "CRC_8, 0x9B, 0x00, true, 0x00, 0x25", // WCDMA
        "CRC_16, 0x8005, 0x0000, true, 0x0000, 0xBB3D", // ARC
        "CRC_16, 0x1021, 0xFFFF, false, 0x0000, 0x29B1", // IBM-3740
        "CRC_16, 0x1021, 0xFFFF, true, 0xFFFF, 0x906E", // IBM-SDLC
        "CRC_16, 0x3D65, 0x0000, true, 0xFFFF, 0xEA82", // DNP
        "CRC_16, 0x8BB7, 0x0000, false, 0x0000, 0xD0DB" // T10-DIF
    })
    void shouldGiveTheCataloguesCheckValueWhenSolvedFromFrames(
            Kind kind, String polynomial, String initial, boolean reflected, String finalXor, String expected) {
        BitField place = new BitField(DIGITS * 8, kind.widthBits(), Order.BIG, false);
        Crc crc = new Crc(Integer.decode(polynomial), Integer.decode(initial), reflected, Integer.decode(finalXor));
        Checksum right = new Checksum(kind, place, 0, 0, DIGITS, crc);
        int length = DIGITS + kind.widthBits() / 8;
        Optional<Checksum> found = new CheckSearch(length, frames(right, length, 7)).find();
        byte[] digits = new byte[length];
        System.arraycopy("123456789".getBytes(StandardCharsets.US_ASCII), 0, digits, 0, DIGITS);
        assertThat(found).isPresent();
        assertThat(found.get().crc().polynomial()).isEqualTo(crc.polynomial());
        assertThat(found.get().compute(digits)).isEqualTo(Long.decode(expected));
    }

    @Test
    void shouldFindNoCheckWhenTheLastByteIsNoise() {
        Random random = new Random(3);
        List<Heard> frames = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            byte[] frame = new byte[12];
            random.nextBytes(frame);
            frames.add(new Heard(frame, i, 0));
        }
        assertThat(new CheckSearch(12, frames).find()).isEmpty();
    }

    private static List<Heard> frames(Checksum check, int length, long seed) {
        Random random = new Random(seed);
        List<Heard> frames = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            byte[] frame = new byte[length];
            random.nextBytes(frame);
            long value = check.compute(frame);
            for (int at = 0; at < check.kind().widthBits() / 8; at++) {
                frame[length - 1 - at] = (byte) (value >> 8 * at);
            }
            frames.add(new Heard(frame, i, 0));
        }
        return frames;
    }
}
