package fermata.daemon.time;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class DeadlineTest {
    /** Stands until it is moved. */
    private static final class HandClock implements MonotonicClock {
        // Near the end of the range, where a reading may well be: only differences count.
        long nanos = Long.MAX_VALUE - 500;

        @Override
        public long nanos() {
            return nanos;
        }

        @Override
        public long machineNanos(Duration duration) {
            return duration.toNanos();
        }
    }

    private final HandClock clock = new HandClock();

    @Test
    void shouldPassWhenItsClockHasGoneSoFar() {
        Deadline deadline = Deadline.in(Duration.ofNanos(1000), clock);
        assertThat(deadline.leftNanos()).isEqualTo(1000);

        clock.nanos += 999;
        assertThat(deadline.leftNanos()).isEqualTo(1);
        assertThat(deadline.hasPassed()).isFalse();

        clock.nanos += 1;
        assertThat(deadline.hasPassed()).isTrue();
        clock.nanos += 1_000_000;
        assertThat(deadline.leftNanos()).isZero();
    }

    @Test
    void shouldHavePassedAtOnceWhenTheLimitIsNegative() {
        assertThat(Deadline.in(Duration.ofSeconds(-1), clock).hasPassed()).isTrue();
    }
}
