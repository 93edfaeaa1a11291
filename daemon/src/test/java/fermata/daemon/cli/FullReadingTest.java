package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import fermata.daemon.demo.Rehearsal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Asks a practice on a real file system without a byte to spare, of which nothing is derived yet. */
class FullReadingTest {
    @TempDir
    Path directory;

    @Test
    void shouldDeriveInMemoryAndAnswerWhenTheDiskIsFull() throws Exception {
        assumeThat(inNamespace("true").code()).isZero();
        Path made = directory.resolve("made");
        CommandRig rig = new CommandRig(made);
        String evening = String.join("\n", Rehearsal.evening(2, 9).lines());
        assertThat(rig.runPiped(evening, "import", "-").code()).isZero();
        String solves = rig.run("solves").out();
        String id = solves.lines()
                .map(String::strip)
                .filter(line -> line.startsWith("1 "))
                .map(line -> line.split(" +")[1])
                .findFirst()
                .orElseThrow();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + made.resolve("practice.db"));
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("UPDATE derivation SET code_version = 'older'");
        }
        Path home = Files.createDirectory(directory.resolve("home"));

        CommandRig.Outcome outcome = inNamespace("mount -t tmpfs -o size=6m tmpfs " + home + " && cp -r " + made
                + "/practice.* " + home + "/ && { cat /dev/zero > " + home + "/full 2>/dev/null; true; }"
                + " && " + fermata("solves", home) + " && " + fermata("night", home) + " && "
                + fermata("show " + id, home) + " && " + fermata("cases", home));

        assertThat(outcome.code()).as(outcome.out()).isZero();
        assertThat(outcome.out()).contains(solves);
    }

    private static String fermata(String command, Path home) {
        return Path.of(System.getProperty("java.home"), "bin", "java") + " -Xmx256m -XX:+UseSerialGC -cp "
                + System.getProperty("java.class.path") + " " + Main.class.getName() + " " + command + " --home "
                + home;
    }

    private static CommandRig.Outcome inNamespace(String script) throws IOException, InterruptedException {
        Process process = new ProcessBuilder("unshare", "--map-root-user", "--mount", "sh", "-c", script)
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return new CommandRig.Outcome(process.waitFor(), said, "");
    }
}
