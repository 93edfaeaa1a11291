package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** What systemd itself says of a unit, where it is installed. */
final class Systemd {
    private static final Path PROGRAM = Path.of("/usr/bin/systemd-analyze");

    private Systemd() {}

    /** Skips the test where systemd is not installed. */
    static void needed() {
        assumeTrue(Files.isExecutable(PROGRAM), "systemd is not installed");
    }

    /** Skips the test where the system does not know a zone: a small Debian comes without tzdata. */
    static void zoneNeeded(String zone) {
        assumeTrue(Files.exists(Path.of("/usr/share/zoneinfo", zone)), "tzdata is not installed");
    }

    /** Runs systemd-analyze in UTC and gives all that it printed; fails unless it was content. */
    static String analyze(String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(PROGRAM.toString()));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("TZ", "UTC");
        Process process = builder.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(said).isZero();
        return said;
    }
}
