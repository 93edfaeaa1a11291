package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import org.junit.jupiter.api.Test;

class HelpTest {
    /** README sends new users to {@code fermata help}. */
    @Test
    void shouldListTheCommandsEachWithAWholeSentence() {
        Outcome help = CommandRig.runPlain("", "help");

        assertThat(help.code()).isZero();
        assertThat(help.err()).isEmpty();
        assertThat(help.out())
                .isEqualTo(CommandRig.runPlain("", "--help").out())
                .contains("listen", "sequences", "backup");
        String commands =
                help.out().substring(help.out().indexOf("Commands:"), help.out().indexOf("Every command"));
        String[] entries = commands.strip().split("\\R(?=  \\w)");
        assertThat(entries).hasSizeGreaterThan(15);
        for (int entry = 1; entry < entries.length; entry++) {
            assertThat(entries[entry].strip()).endsWith(".");
        }
        assertThat(help.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
    }

    @Test
    void shouldTellOfOneCommand() {
        Outcome help = CommandRig.runPlain("", "help", "backup");

        assertThat(help.code()).isZero();
        assertThat(help.out()).contains("practice.db");
    }
}
