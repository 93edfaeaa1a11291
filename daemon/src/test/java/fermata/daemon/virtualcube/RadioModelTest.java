package fermata.daemon.virtualcube;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RadioModelTest {
    @Test
    void shouldBeLateButNeverEarly() {
        RadioModel radio = RadioModel.healthy();
        SplittableRandom random = new SplittableRandom(1);

        for (long at = 0; at < 3_000_000_000L; at += 1_234_567) {
            long late = radio.deliveryNanos(at, random) - at;
            assertThat(late).isBetween(600_000L, 1_030_000_000L);
        }
    }

    @Test
    void shouldDelayAsARealBusDoes() {
        // The figures of RadioModel's own javadoc: median 1.0 ms, 99th percentile 10 to 17 ms.
        RadioModel radio = RadioModel.healthy();
        SplittableRandom random = new SplittableRandom(2);
        long[] delays = LongStream.generate(() -> radio.deliveryNanos(0, random))
                .limit(50_000)
                .sorted()
                .toArray();

        assertThat(delays[25_000] / 1e6).isCloseTo(0.95, within(0.03));
        assertThat(delays[49_500] / 1e6).isBetween(11.0, 15.0);
    }

    @Test
    void shouldLetSeveralShareOneConnectionEvent() {
        RadioModel radio = new RadioModel(Duration.ofMillis(50), Duration.ZERO, 0, 0, 0, Duration.ZERO);
        SplittableRandom random = new SplittableRandom(3);

        assertThat(radio.deliveryNanos(1, random)).isEqualTo(50_000_000);
        assertThat(radio.deliveryNanos(49_999_999, random)).isEqualTo(50_000_000);
        assertThat(radio.deliveryNanos(50_000_000, random)).isEqualTo(50_000_000);
        assertThat(radio.deliveryNanos(50_000_001, random)).isEqualTo(100_000_000);
    }

    // Bluetooth Core: connection interval 7.5 ms to 4 s.
    @ParameterizedTest
    @ValueSource(longs = {7_499_999, 4_000_000_001L})
    void shouldRefuseAnIntervalThatNoRadioHas(long nanos) {
        assertThatThrownBy(() -> new RadioModel(Duration.ofNanos(nanos), Duration.ZERO, 0, 0, 0, Duration.ZERO))
                .hasMessageContaining("7.5 ms");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.1, 1.1, Double.NaN})
    void shouldRefuseAShareThatIsNone(double share) {
        assertThatThrownBy(() -> RadioModel.healthy().losing(share, 0)).hasMessageContaining("lossShare " + share);
    }
}
