package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ScanWatchdogTest {
    private static final long START = -7_000_000_000L;

    @Test
    void shouldWaitLongerEachTimeAndNoLongerThanAnHour() {
        ScanWatchdog watchdog = new ScanWatchdog(START);
        List<Long> restartedAtSeconds = new ArrayList<>();
        for (long second = 0; second < Duration.ofHours(6).toSeconds(); second++) {
            if (watchdog.isDue(at(second))) {
                watchdog.restarted(at(second));
                restartedAtSeconds.add(second);
            }
        }

        assertThat(restartedAtSeconds.subList(0, 5)).containsExactly(90L, 270L, 630L, 1350L, 2790L);
        assertThat(restartedAtSeconds.get(6) - restartedAtSeconds.get(5)).isEqualTo(3600);
        assertThat(watchdog.restarts()).isEqualTo(restartedAtSeconds.size());
    }

    @Test
    void shouldBeginItsPatienceAnewWhenAnythingIsHeard() {
        ScanWatchdog watchdog = new ScanWatchdog(START);
        watchdog.restarted(at(90));

        watchdog.heard(at(100));

        assertThat(watchdog.isDue(at(189))).isFalse();
        assertThat(watchdog.isDue(at(190))).isTrue();
    }

    private static long at(long second) {
        return START + Duration.ofSeconds(second).toNanos();
    }
}
