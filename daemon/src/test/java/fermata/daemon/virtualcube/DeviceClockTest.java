package fermata.daemon.virtualcube;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class DeviceClockTest {
    @Test
    void shouldRunAheadOfTheWorldByItsSkew() {
        DeviceClock clock = new DeviceClock(5_000, 100);
        long hourNanos = 3_600_000_000_000L;

        // 100 ppm of an hour are 360 ms.
        assertThat(clock.readingMillis(hourNanos)).isEqualTo(5_000 + 3_600_360);
        assertThat(clock.worldNanos(3_600_360_000L)).isEqualTo(hourNanos);
        assertThat(clock.readingAtMicros(3_600_360_000L)).isEqualTo(5_000 + 3_600_360);
    }

    @Test
    void shouldStandStillBeforeTheScript() {
        assertThat(new DeviceClock(5_000, 100).readingMillis(-1_000_000_000L)).isEqualTo(5_000);
    }

    @Test
    void shouldRefuseAClockThatNobodyWouldBuild() {
        assertThatThrownBy(() -> new DeviceClock(0, 10_000)).hasMessageContaining("skewPpm 10000.0");
        assertThatThrownBy(() -> new DeviceClock(-1, 0)).hasMessageContaining("startMillis -1");
    }
}
