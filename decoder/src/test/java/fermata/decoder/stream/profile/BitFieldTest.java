package fermata.decoder.stream.profile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.stream.profile.BitField.Order;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BitFieldTest {
    @ParameterizedTest
    @EnumSource(Order.class)
    void shouldReadWholeBytesAsTheJdkDoes(Order order) {
        Random random = new Random(3);
        ByteOrder jdk = order == Order.BIG ? ByteOrder.BIG_ENDIAN : ByteOrder.LITTLE_ENDIAN;
        for (int round = 0; round < 200; round++) {
            byte[] frame = new byte[12];
            random.nextBytes(frame);
            int at = random.nextInt(8);
            ByteBuffer buffer = ByteBuffer.wrap(frame).order(jdk);

            assertThat(new BitField(8 * at, 32, order, true).read(frame)).isEqualTo(buffer.getInt(at));
            assertThat(new BitField(8 * at, 32, order, false).read(frame))
                    .isEqualTo(Integer.toUnsignedLong(buffer.getInt(at)));
            assertThat(new BitField(8 * at, 16, order, true).read(frame)).isEqualTo(buffer.getShort(at));
            assertThat(new BitField(8 * at, 8, order, false).read(frame)).isEqualTo(frame[at] & 0xFF);
        }
    }

    @Test
    void shouldCountBitsFromTheEndThatTheOrderNames() {
        byte[] frame = {(byte) 0b1010_0011, (byte) 0b0100_0001};

        assertThat(new BitField(0, 4, Order.BIG, false).read(frame)).isEqualTo(0b1010);
        assertThat(new BitField(0, 4, Order.LITTLE, false).read(frame)).isEqualTo(0b0011);
        assertThat(new BitField(6, 4, Order.BIG, false).read(frame)).isEqualTo(0b1101);
        assertThat(new BitField(6, 4, Order.LITTLE, false).read(frame)).isEqualTo(0b0110);
        assertThat(new BitField(0, 3, Order.BIG, true).read(frame)).isEqualTo(-3);
    }

    @ParameterizedTest
    @EnumSource(Order.class)
    void shouldReadBackWhatWasWrittenAndTouchNothingElse(Order order) {
        Random random = new Random(4);
        for (int round = 0; round < 500; round++) {
            int width = 1 + random.nextInt(BitField.MAX_WIDTH_BITS);
            BitField field = new BitField(random.nextInt(30), width, order, false);
            byte[] frame = new byte[10];
            random.nextBytes(frame);
            byte[] written = frame.clone();
            long value = random.nextLong() & field.allOnes();

            BitWriter.write(field, written, value);

            assertThat(field.read(written)).isEqualTo(value);
            BitWriter.write(field, written, field.read(frame));
            assertThat(written).isEqualTo(frame);
        }
    }

    @Test
    void shouldRefuseAFieldWiderThanItCanHold() {
        assertThatThrownBy(() -> new BitField(0, 49, Order.BIG, false)).hasMessageContaining("49 bits");
    }
}
