package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ServiceTest {
    @TempDir
    Path directory;

    @Test
    void shouldListenAsToldFromWhenTheBoardStarts() throws IOException {
        Outcome outcome = service(
                "",
                "--no-lan --solver cook --hand left --reset-adapter --adapter 01:23:45:67:89:ab"
                        + " --port 9000 --home logs/../practice");

        assertThat(outcome.code()).as(outcome.err()).isZero();
        assertThat(outcome.out()).isEqualTo(directory.resolve("fermata-listen.service") + "\n");
        assertThat(unit())
                .contains("ExecStart=/bin/true listen --home "
                        + Path.of("practice").toAbsolutePath()
                        + " --solver cook --hand left --adapter 01:23:45:67:89:ab --reset-adapter --port 9000\n")
                .contains("Restart=on-failure\n", "StartLimitIntervalSec=0\n", "WantedBy=default.target\n");
    }

    /** The pages stay on the board unless somebody says otherwise, and nobody is asked who has said it. */
    @ParameterizedTest
    @CsvSource({
        "y, '', true, true",
        "Yes, '', true, true",
        "n, '', true, false",
        "'', '', true, false",
        "y, --no-lan, false, false",
        "n, --lan, false, true",
        "y, --no-pages, false, false"
    })
    void shouldAskWhetherOtherMachinesMayReachThePages(String answer, String option, boolean asked, boolean lan)
            throws IOException {
        Outcome outcome = service(answer + "\n", option);

        assertThat(outcome.err().contains("(y/N)")).isEqualTo(asked);
        assertThat(unit().contains(" --lan\n")).isEqualTo(lan);
    }

    @ParameterizedTest
    @CsvSource({
        "--hand both, both",
        "--adapter hci0, --adapter hci0",
        "--profile no-such-profile.json, no-such-profile.json",
        "--port x, x",
        "--port -1, -1 is not in 0..65535",
        "--port 65536, 65536 is not in 0..65535"
    })
    void shouldRefuseNowWhatListeningWouldRefuseLater(String option, String named) {
        Outcome outcome = service("", "--no-lan " + option);

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains(named);
        assertThat(directory).isEmptyDirectory();
    }

    @ParameterizedTest
    @ValueSource(strings = {"true", "/no/such/program", "/usr", "/etc/passwd"})
    void shouldAskNothingBeforeWhatWasTypedIsFound(String program) {
        Outcome outcome = CommandRig.runPlain("y\n", "service", "--program", program, "--out", directory.toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err())
                .isEqualTo("fermata service: --program " + program
                        + " is not the full path of a program that can be run\n");
    }

    @Test
    void shouldWriteAUnitThatSystemdAccepts() throws IOException, InterruptedException {
        Systemd.needed();
        service("", "--no-lan");

        assertThat(Systemd.analyze(
                        "verify", directory.resolve("fermata-listen.service").toString()))
                .isEmpty();
    }

    private Outcome service(String in, String options) {
        String[] words = ("service --program /bin/true --out " + directory + " " + options)
                .strip()
                .split(" +");
        return CommandRig.runPlain(in, words);
    }

    private String unit() throws IOException {
        return Files.readString(directory.resolve("fermata-listen.service"));
    }
}
