package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import org.junit.jupiter.api.Test;

class PrepareTest {
    @Test
    void shouldGoThroughTheUsualCommandsAndSayNothing() {
        assertThat(CommandRig.runPlain("", "prepare")).isEqualTo(new Outcome(0, "", ""));
        assertThat(CommandRig.runPlain("", "--help").out()).doesNotContain("prepare");
    }
}
