package fermata.daemon.bluetooth;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.capture.LinkFault;
import java.time.Duration;
import org.junit.jupiter.api.Test;

class RetryPolicyTest {
    private final RetryPolicy policy = new RetryPolicy();

    @Test
    void shouldClimbFromQuickTriesOverOneResetToGrowingPauses() {
        for (int i = 0; i < 8; i++) {
            assertThat(policy.after(LinkFault.RETRY_FAST))
                    .isEqualTo(new RetryPolicy.Step(LinkFault.RETRY_FAST, Duration.ofMillis(250)));
        }

        assertThat(policy.after(LinkFault.RETRY_FAST).fault()).isEqualTo(LinkFault.RESET_ADAPTER);
        assertThat(policy.after(LinkFault.RETRY_FAST))
                .isEqualTo(new RetryPolicy.Step(LinkFault.RETRY_SLOW, Duration.ofSeconds(2)));
        assertThat(policy.after(LinkFault.RETRY_FAST).pause()).isEqualTo(Duration.ofSeconds(4));
    }

    @Test
    void shouldNeverPauseLongerThanAMinute() {
        Duration last = Duration.ZERO;
        for (int i = 0; i < 100; i++) {
            Duration pause = policy.after(LinkFault.RETRY_SLOW).pause();
            assertThat(pause).isGreaterThanOrEqualTo(last).isLessThanOrEqualTo(Duration.ofSeconds(60));
            last = pause;
        }
        assertThat(last).isEqualTo(Duration.ofSeconds(60));
    }

    @Test
    void shouldStartAnewWhenALinkDelivered() {
        for (int i = 0; i < 20; i++) {
            policy.after(LinkFault.RETRY_FAST);
        }

        policy.succeeded();

        assertThat(policy.after(LinkFault.RETRY_FAST).pause()).isEqualTo(Duration.ofMillis(250));
        assertThat(policy.after(LinkFault.RETRY_SLOW).pause()).isEqualTo(Duration.ofSeconds(1));
    }

    @Test
    void shouldRetryAMistakeOfOurOwnSlowlyAndWithoutAnEnd() {
        assertThat(policy.after(LinkFault.BUG)).isEqualTo(new RetryPolicy.Step(LinkFault.BUG, Duration.ofSeconds(1)));
        assertThat(policy.after(LinkFault.BUG).pause()).isEqualTo(Duration.ofSeconds(2));
    }
}
