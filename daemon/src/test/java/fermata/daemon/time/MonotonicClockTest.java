package fermata.daemon.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MonotonicClockTest {
    @Test
    void shouldReadTheMachinesClockWhenNotScaled() {
        MonotonicClock clock = MonotonicClock.system();

        long before = System.nanoTime();
        long read = clock.nanos();

        assertThat(read).isBetween(before, System.nanoTime());
        assertThat(clock.machineNanos(Duration.ofMillis(3))).isEqualTo(3_000_000);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.5, 60, 200})
    void shouldPassSpeedTimesTheMachinesTimeWhenScaled(double speed) {
        MonotonicClock clock = MonotonicClock.scaled(speed);
        long machineFrom = System.nanoTime();
        long from = clock.nanos();
        long machineFromLater = System.nanoTime();

        while (System.nanoTime() - machineFromLater < 5_000_000) {
            Thread.onSpinWait();
        }
        long machineTo = System.nanoTime();
        long passed = clock.nanos() - from;

        assertThat(passed / speed)
                .isBetween(machineTo - machineFromLater - 10.0, System.nanoTime() - machineFrom + 10.0);
    }

    @Test
    void shouldSleepShorterWhenScaled() throws InterruptedException {
        MonotonicClock clock = MonotonicClock.scaled(1000);
        long from = clock.nanos();

        clock.sleep(Duration.ofSeconds(2));

        assertThat(clock.nanos() - from)
                .isGreaterThanOrEqualTo(Duration.ofSeconds(2).toNanos());
        assertThat(clock.machineNanos(Duration.ofSeconds(2))).isEqualTo(2_000_000);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, Double.NaN, Double.POSITIVE_INFINITY})
    void shouldRefuseASpeedThatIsNone(double speed) {
        assertThatThrownBy(() -> MonotonicClock.scaled(speed))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("speed " + speed);
    }
}
