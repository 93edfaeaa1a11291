package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.demo.Rehearsal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Imports onto a real file system of two megabytes, in a mount namespace of its own. Where the kernel grants none, the
 * store's own test with a bounded database stands for it.
 */
class FullDiskTest {
    @TempDir
    Path directory;

    @BeforeEach
    void setUp() throws Exception {
        assumeThat(inNamespace("true").code()).isZero();
    }

    @Test
    void shouldSayWhatIsFullAndKeepWhatWasThere() throws Exception {
        List<String> evening = Rehearsal.evening(3, 9).lines();
        Path small = Files.write(directory.resolve("small.jsonl"), evening);
        String many = IntStream.range(0, 50)
                .mapToObj(copy -> String.join("\n", evening)
                        .replaceFirst("\\{", "{\"started_at\":\"2026-11-24T20:" + (10 + copy) + ":00Z\","))
                .collect(Collectors.joining("\n"));
        Path large = Files.writeString(directory.resolve("large.jsonl"), many);
        Path home = Files.createDirectory(directory.resolve("home"));

        Outcome outcome = inNamespace("mount -t tmpfs -o size=2m tmpfs " + home
                + " && " + fermata("import " + small, home)
                + " && " + fermata("export --out " + directory.resolve("before.jsonl"), home)
                + " && { " + fermata("import " + large, home) + "; code=$?; }"
                + " && " + fermata("export --out " + directory.resolve("after.jsonl"), home)
                + " && exit $code");

        assertThat(outcome.code()).as(outcome.out()).isEqualTo(2);
        assertThat(outcome.out())
                .contains("fermata import: cannot keep what the file tells: the disk that holds " + home
                        + "/practice.db is full; free some space there");
        assertThat(directory.resolve("after.jsonl")).hasSameTextualContentAs(directory.resolve("before.jsonl"));
    }

    @Test
    void shouldSayWhereABackupFoundNoRoom() throws Exception {
        Path evening = Files.write(
                directory.resolve("evening.jsonl"), Rehearsal.evening(3, 9).lines());
        Path home = directory.resolve("home");
        Path stick = Files.createDirectory(directory.resolve("stick"));

        Outcome outcome = inNamespace("mount -t tmpfs -o size=16k tmpfs " + stick
                + " && " + fermata("import " + evening, home)
                + " && { " + fermata("backup " + stick.resolve("copy.db"), home) + "; code=$?; }"
                + " && ls " + stick + " && exit $code");

        assertThat(outcome.code()).as(outcome.out()).isEqualTo(2);
        assertThat(outcome.out())
                .contains("fermata backup: cannot write a backup of " + home + "/practice.db to " + stick
                        + "/copy.db: the disk that holds it is full; free some space there, or name a FILE elsewhere")
                .doesNotContain("--home")
                .doesNotContain("unfinished");
    }

    private static String fermata(String command, Path home) {
        return Path.of(System.getProperty("java.home"), "bin", "java") + " -Xmx256m -XX:+UseSerialGC -cp "
                + System.getProperty("java.class.path") + " " + Main.class.getName() + " " + command + " --home "
                + home;
    }

    private static Outcome inNamespace(String script) throws IOException, InterruptedException {
        Process process = new ProcessBuilder("unshare", "--map-root-user", "--mount", "sh", "-c", script)
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new Outcome(process.waitFor(), said, "");
    }
}
