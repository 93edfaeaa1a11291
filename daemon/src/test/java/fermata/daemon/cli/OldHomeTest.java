package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

/** Homes that the programs of earlier schemas left: each is one solve of theirs, dumped by sqlite3. */
class OldHomeTest {
    private static final String SOLVE = "1-33";

    @TempDir
    Path directory;

    @ParameterizedTest
    @CsvSource({
        "1, night",
        "1, solves",
        "1, morning",
        "1, export",
        "2, show " + SOLVE,
        "2, cases",
        "2, calibrate",
        "2, night --over all --json",
    })
    void shouldReadAnOldHomeWithWhicheverCommandComesFirst(int schema, String command) throws Exception {
        CommandRig rig = new CommandRig(home(schema));

        Outcome first = rig.run(command.split(" "));

        // Nothing to tell from is said with 2, too; what was there is found all the same.
        assertThat(first.err()).doesNotContain("older", "fault");
        assertThat(first.code()).isEqualTo(command.equals("calibrate") ? 2 : 0);
        JsonNode solve = rig.run("show", SOLVE, "--json").json();
        assertThat(solve.get("day").stringValue()).isEqualTo("2026-11-24");
        assertThat(solve.get("time_us").longValue()).isBetween(16_100_000L, 16_200_000L);
        assertThat(solve.get("turns").size()).isEqualTo(63);
    }

    @Test
    void shouldSayWhatToDoWhenAnOlderProgramIsWritingToIt() throws Exception {
        Path home = home(2);
        try (FileChannel channel = FileChannel.open(
                        home.resolve("writer.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
                FileLock lock = channel.lock()) {
            assertThat(lock.isValid()).isTrue();
            Outcome night = new CommandRig(home).run("night");

            assertThat(night.code()).isEqualTo(2);
            assertThat(night.err()).contains("older fermata", "is writing to it", "end it, then ask again");
        }
    }

    private Path home(int schema) throws IOException, SQLException {
        Path home = Files.createDirectory(directory.resolve("home"));
        try (InputStream dump = getClass().getResourceAsStream("/fermata/daemon/store/schema-" + schema + ".sql");
                Connection connection = DriverManager.getConnection("jdbc:sqlite:" + home.resolve("practice.db"));
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("PRAGMA journal_mode = WAL");
            statement.executeUpdate(new String(dump.readAllBytes(), StandardCharsets.UTF_8));
        }
        return home;
    }
}
