package fermata.decoder.stream.profile;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.stream.profile.Checksum.Crc;
import fermata.decoder.stream.profile.Checksum.Kind;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChecksumTest {
    /**
     * The check value of each algorithm is its CRC of the ASCII digits 1 to 9. Source: Greg Cook, "Catalogue of
     * parametrised CRC algorithms", entries SMBUS, I-432-1, ROHC, MAXIM-DOW, IBM-3740, XMODEM, KERMIT, IBM-SDLC.
     */
    @ParameterizedTest
    @CsvSource({
        "CRC_8, 0x07, 0x00, false, 0x00, 0xF4",
        "CRC_8, 0x07, 0x00, false, 0x55, 0xA1",
        "CRC_8, 0x07, 0xFF, true, 0x00, 0xD0",
        "CRC_8, 0x31, 0x00, true, 0x00, 0xA1",
        "CRC_16, 0x1021, 0xFFFF, false, 0x0000, 0x29B1",
        "CRC_16, 0x1021, 0x0000, false, 0x0000, 0x31C3",
        "CRC_16, 0x1021, 0x0000, true, 0x0000, 0x2189",
        "CRC_16, 0x1021, 0xFFFF, true, 0xFFFF, 0x906E"
    })
    void shouldGiveThePublishedCheckValue(
            Kind kind, int polynomial, int initial, boolean reflected, int finalXor, int expected) {
        byte[] digits = "123456789".getBytes(StandardCharsets.US_ASCII);
        BitField field = new BitField(0, kind.widthBits(), BitField.Order.LITTLE, false);

        Checksum checksum = new Checksum(kind, field, 0, 0, 0, new Crc(polynomial, initial, reflected, finalXor));

        assertThat(checksum.compute(digits)).isEqualTo(expected);
    }

    /** 0x31 + ... + 0x39 = 477 = 0x1DD; the exclusive or of the digits 1 to 9 is 0x31. */
    @ParameterizedTest
    @CsvSource({"SUM_8, 0, 0, 0xDD", "XOR_8, 0, 0, 0x31", "SUM_8, 1, 3, 0x65", "XOR_8, 7, -1, 0x38"})
    void shouldAddAndXorTheRange(Kind kind, int from, int to, int expected) {
        byte[] digits = "123456789".getBytes(StandardCharsets.US_ASCII);
        BitField field = new BitField(0, 8, BitField.Order.LITTLE, false);

        assertThat(new Checksum(kind, field, 0, from, to, new Crc(0, 0, false, 0)).compute(digits))
                .isEqualTo(expected);
    }
}
