package fermata.decoder.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TickUnwrapperTest {
    @ParameterizedTest
    @CsvSource({"16, 1000", "24, 1000", "32, 1000", "24, 30.517578125", "48, 1"})
    void shouldFollowAClockOverManyWrapsWhenFramesAreLate(int bits, double tickMicros) {
        Random random = new Random(bits);
        TickUnwrapper unwrapper = new TickUnwrapper(bits, tickMicros);
        long wrap = 1L << bits;
        double micros = wrap * tickMicros - 5e6;
        for (int i = 0; i < 2000; i++) {
            // Now and then a pause that is longer than the narrow clocks take to wrap.
            micros += random.nextInt(100) == 0 ? 900e6 * random.nextDouble() : 3e6 * random.nextDouble();
            long ticks = (long) (micros / tickMicros);
            long arrival = (long) micros + random.nextInt(4_000_000);

            long unwrapped = unwrapper.peek(ticks % wrap, arrival).orElseThrow();

            if (i == 0) {
                assertThat(unwrapped).isEqualTo(ticks % wrap);
            } else {
                assertThat(unwrapped).isEqualTo(ticks - offset(wrap, tickMicros));
            }
            unwrapper.accept(unwrapped, arrival);
        }
    }

    /** The first reading is taken as it stands, so whole wraps before it are not counted. */
    private static long offset(long wrap, double tickMicros) {
        return (long) ((wrap * tickMicros - 5e6) / tickMicros) / wrap * wrap;
    }

    @Test
    void shouldRefuseATickThatGoesBackOrFarAway() {
        TickUnwrapper unwrapper = new TickUnwrapper(32, 1000);
        unwrapper.accept(100_000, 100_000_000);

        assertThat(unwrapper.peek(99_999, 100_010_000)).isEmpty();
        assertThat(unwrapper.isNear(99_999, 100_010_000)).isTrue();
        assertThat(unwrapper.peek(12, 101_000_000)).isEmpty();
        assertThat(unwrapper.isNear(12, 101_000_000)).isFalse();
        assertThat(unwrapper.peek(200_000, 101_000_000)).isEmpty();
        assertThat(unwrapper.peek(100_900, 101_000_000)).isEqualTo(OptionalLong.of(100_900));
    }

    @Test
    void shouldTakeWhatComesWhenRestarted() {
        TickUnwrapper unwrapper = new TickUnwrapper(32, 1000);
        unwrapper.accept(100_000, 100_000_000);
        unwrapper.restart();

        assertThat(unwrapper.peek(12, 101_000_000)).hasValue(12);
    }

    @Test
    void shouldPlaceAnEarlierMomentAcrossAWrap() {
        TickUnwrapper unwrapper = new TickUnwrapper(16, 1000);

        assertThat(unwrapper.before(65_536 + 10, 65_530)).isEqualTo(65_530);
        assertThat(unwrapper.before(65_536 + 10, 10)).isEqualTo(65_546);
    }

    @Test
    void shouldRefuseAClockWithoutWidth() {
        assertThatThrownBy(() -> new TickUnwrapper(0, 1000)).hasMessageContaining("0 bits");
    }
}
