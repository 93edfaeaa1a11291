package fermata.daemon.fakebluez;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A few evenings of troubles from a Bluetooth service that answers anything with anything. */
@Timeout(300)
class BluezScriptTest {
    private static final int SCRIPTS = 50;
    /** Enough to be done in half a minute; each waits most of its time. */
    private static final int AT_ONCE = 12;

    @Test
    void shouldKeepEveryTurnOnceAndComeBackWhateverTheServiceSays() throws Exception {
        BluezScripts.Result result = BluezScripts.play(1, SCRIPTS, AT_ONCE);

        assertThat(result.bad()).isEmpty();
        assertThat(result.escaped()).isEmpty();
        assertThat(result.threadsLeft()).isZero();
        assertThat(result.outcomes()).allMatch(outcome -> !outcome.told().isEmpty());
    }
}
