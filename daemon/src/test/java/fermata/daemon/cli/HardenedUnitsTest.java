package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the units take from the program, and that they ask for nothing that a user's manager may not give. */
class HardenedUnitsTest {
    @TempDir
    Path directory;

    @ParameterizedTest
    @ValueSource(strings = {"fermata-listen.service", "fermata-morning.service"})
    void shouldTakeWhatTheProgramNeverNeeds(String unit) throws IOException {
        assertThat(lines(unit))
                .contains(
                        "UMask=0077",
                        "NoNewPrivileges=yes",
                        "RestrictAddressFamilies=AF_UNIX AF_INET AF_INET6",
                        "RestrictNamespaces=yes",
                        "RestrictRealtime=yes",
                        "RestrictSUIDSGID=yes",
                        "LockPersonality=yes",
                        "SystemCallArchitectures=native");
    }

    /**
     * A mount namespace, dropped capabilities and other owners need rights or user namespaces that a user's manager may
     * lack, and then the unit does not start; the JVM's compiler writes what it runs. Source: systemd.exec(5).
     */
    @ParameterizedTest
    @ValueSource(strings = {"fermata-listen.service", "fermata-morning.service"})
    void shouldAskForNothingThatCouldKeepItFromStarting(String unit) throws IOException {
        assertThat(lines(unit))
                .contains("[Service]")
                .noneMatch(line -> line.matches("(Private|Protect|ReadOnly|ReadWrite|Inaccessible|Bind|Temporary|Root"
                        + "|Capability|Ambient|User|Group|DynamicUser|MemoryDenyWriteExecute|ProcSubset).*=.*"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"fermata-listen.service", "fermata-morning.service"})
    void shouldBeLessExposedByTheMeasureOfSystemd(String unit) throws IOException, InterruptedException {
        Systemd.needed();
        Path file = write(unit);

        // In tenths; fails above it. A unit that takes nothing is at 96.
        assertThat(Systemd.analyze("security", "--offline=true", "--threshold=80", file.toString()))
                .contains("RestrictNamespaces");
    }

    private List<String> lines(String unit) throws IOException {
        return Files.readAllLines(write(unit));
    }

    private Path write(String unit) {
        String[] command = unit.contains("morning")
                ? new String[] {"timer", "--program", "/bin/true", "--out", directory.toString()}
                : new String[] {"service", "--no-lan", "--program", "/bin/true", "--out", directory.toString()};
        assertThat(CommandRig.runPlain("", command).code()).isZero();
        return directory.resolve(unit);
    }
}
