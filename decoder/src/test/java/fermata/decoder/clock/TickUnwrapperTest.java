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

    /** A frame can be held up for 32 s; two crystals part by 200 ppm, 0.2 s in 1000 s. */
    @ParameterizedTest
    @CsvSource({
        "0, 32000, true", "0, 32001, false", "0, -32000, true", "0, -32001, false",
        "1000, 1032200, true", "1000, 1032201, false", "1000, 967800, true", "1000, 967799, false",
        "-1000, -1032200, true", "-1000, -1032201, false"
    })
    void shouldBelieveACounterThatIsAwayFromTheBoardByNoMoreThanALateFrame(
            long elapsedSeconds, long elapsedTicks, boolean isBelieved) {
        TickUnwrapper unwrapper = new TickUnwrapper(32, 1000);
        unwrapper.accept(5_000_000, 9_000_000_000L);
        long ticks = 5_000_000 + elapsedTicks;
        long arrival = 9_000_000_000L + elapsedSeconds * 1_000_000;

        assertThat(unwrapper.isNear(ticks, arrival)).isEqualTo(isBelieved);
        assertThat(unwrapper.near(ticks, arrival))
                .isEqualTo(isBelieved ? OptionalLong.of(ticks) : OptionalLong.empty());
        assertThat(unwrapper.peek(ticks, arrival))
                .isEqualTo(isBelieved && elapsedTicks >= 0 ? OptionalLong.of(ticks) : OptionalLong.empty());
    }

    @Test
    void shouldKeepTheLastTicksAndStartAnewWhenRestarted() {
        TickUnwrapper unwrapper = new TickUnwrapper(16, 500);
        assertThat(unwrapper.hasStarted()).isFalse();
        assertThat(unwrapper.near(7, 0)).isEmpty();
        assertThat(unwrapper.isNear(7, 0)).isTrue();

        unwrapper.accept(70_000, 35_000_000);
        assertThat(unwrapper.hasStarted()).isTrue();
        assertThat(unwrapper.lastTicks()).isEqualTo(70_000);
        assertThat(unwrapper.peek(70_000 - 65_536, 35_000_000)).as("no step").hasValue(70_000);
        assertThat(unwrapper.micros(70_001)).isEqualTo(35_000_500);

        unwrapper.restart();
        assertThat(unwrapper.hasStarted()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"0, 1000", "49, 1000", "16, 0", "16, -1", "16, NaN"})
    void shouldRefuseAClockWithoutWidthOrTick(int bits, double tickMicros) {
        assertThatThrownBy(() -> new TickUnwrapper(bits, tickMicros))
                .hasMessageContaining(bits + " bits and " + tickMicros + " us");
    }

    @Test
    void shouldTakeTheNarrowestAndTheWidestClock() {
        TickUnwrapper narrow = new TickUnwrapper(1, 1e9);
        narrow.accept(1, 0);

        assertThat(narrow.peek(0, 1_000_000_000)).hasValue(2);
        assertThat(new TickUnwrapper(48, 1).peek(5, 0)).hasValue(5);
    }
}
