package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.demo.Rehearsal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

/** What is in the home already is not kept a second time, and nothing else is taken for it. */
class ImportAgainTest {
    private static final String START = "\"started_at\":\"2026-11-24T20:00:00Z\",\"zone\":\"Europe/Oslo\",";
    private static final String HEADER =
            "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\",\"hand\":\"left\",\"scramble\":\"U' R'\"";
    private static final String SOLVE = """
            {"turn":"R","at":1000000}
            {"turn":"U","at":2000000}
            """;

    @TempDir
    Path directory;

    private CommandRig rig;

    @BeforeEach
    void setUp() {
        rig = new CommandRig(directory.resolve("home"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", START})
    void shouldAddNothingWhenAFileComesAgain(String start) throws IOException {
        List<String> lines = new ArrayList<>(Rehearsal.evening(3, 9).lines());
        lines.set(0, lines.get(0).replace("\"hand\"", start + "\"hand\""));
        String file = Files.write(directory.resolve("evening.jsonl"), lines).toString();
        Outcome first = rig.run("import", file);
        String kept = rig.run("export", "--with-names").out();
        String night = rig.run("night", "--json").out();

        Outcome again = rig.run("import", file);

        assertThat(first.out()).startsWith("1 stream with ");
        assertThat(again.code()).isZero();
        assertThat(again.out())
                .isEqualTo("1 stream is in this practice already, the first as capture 1; nothing was added\n");
        assertThat(rig.run("export", "--with-names").out()).isEqualTo(kept);
        assertThat(rig.run("night", "--json").out()).isEqualTo(night);
    }

    @Test
    void shouldAddOnlyWhatIsNewInAFileThatGrew() {
        pipe(HEADER + "}\n" + SOLVE);

        JsonNode json = rig.runPiped(
                        HEADER + "}\n" + SOLVE + HEADER + "}\n" + SOLVE.replace("2000000", "2000001"),
                        "import",
                        "-",
                        "--json")
                .json();

        assertThat(json.get("streams").intValue()).isEqualTo(1);
        assertThat(json.get("turns").intValue()).isEqualTo(2);
        assertThat(json.get("captures").toString()).isEqualTo("[2]");
        assertThat(json.get("solves").toString()).isEqualTo("[\"2-0\"]");
        assertThat(json.get("already").toString()).isEqualTo("[1]");
    }

    @Test
    void shouldCountBothKinds() {
        String two = HEADER + "}\n" + SOLVE + HEADER + "}\n" + SOLVE.replace("\"U\"", "\"U2\"");
        pipe(two);

        assertThat(pipe(two + HEADER + "}\n{\"turn\":\"R\",\"at\":1000000}\n").lines())
                .containsExactly(
                        "1 stream with 1 turn imported; 1 attempt found, the first is 3-0",
                        "2 streams are in this practice already, the first as capture 1; not added again");
    }

    /** The first stands for what is kept, the second for what comes. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | '' | \"U\" | \"U'\"",
                "'' | '' | 2000000 | 2000001",
                "'' | '' | 2000000} | 2000000}\\n{\"turn\":\"R\",\"at\":2100000}",
                "'' | ',\"solver\":\"cook\"' | x | x",
                "',\"solver\":\"cook\"' | ',\"solver\":\"mate\"' | x | x",
                "',\"started_at\":\"2026-11-24T20:00:00Z\"' | ',\"started_at\":\"2026-11-24T20:00:01Z\"' | x | x",
                "',\"truth\":{\"id\":\"x1\"}' | ',\"truth\":{\"id\":\"x2\"}' | x | x",
            })
    void shouldKeepBothOfTwoThatAreMerelyAlike(String kept, String coming, String word, String other) {
        pipe(HEADER + kept + "}\n" + SOLVE);
        String second = HEADER + coming + "}\n" + SOLVE.replace(word, other.replace("\\n", "\n"));

        assertThat(pipe(second).out()).startsWith("1 stream with ");
        assertThat(pipe(second).out()).contains("as capture 2; nothing was added");
        assertThat(pipe(HEADER + kept + "}\n" + SOLVE).out()).contains("as capture 1; nothing was added");
    }

    @Test
    void shouldCompleteAnImportThatWasCutOff() {
        String first = HEADER + "}\n" + SOLVE;
        String second = HEADER + "}\n" + SOLVE.replace("\"U\"", "\"U2\"");
        Outcome cut = pipe(first + second.substring(0, second.length() - 5));

        assertThat(cut.code()).isEqualTo(2);
        assertThat(pipe(first + second).out()).startsWith("2 streams with 4 turns imported; 2 attempts found");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "--with-names"})
    void shouldKnowItsOwnExportAlsoOfWhatWasSetRightMeanwhile(String option) {
        String file = HEADER + ",\"cube\":\"galley cube\",\"solver\":\"cook\"}\n" + SOLVE;
        pipe(file);
        String[] export = option.isEmpty() ? new String[] {"export"} : new String[] {"export", option};
        String before = rig.run(export).out();
        assertThat(rig.run("show", "1-0", "--hand", "R U").err()).isEmpty();
        String after = rig.run(export).out();
        assertThat(rig.run("show", "1-0", "--hand", "z' U L").code()).isZero();

        assertThat(after).startsWith(before).isNotEqualTo(before);
        for (String again : List.of(file, before, after, rig.run(export).out())) {
            assertThat(pipe(again).out()).contains("capture 1; nothing was added");
        }
        CommandRig other = new CommandRig(directory.resolve("other"));
        other.runPiped(after, "import", "-");
        assertThat(other.run(export).out()).isEqualTo(after);
    }

    /** Takes away what migrations 5 to 8 brought, but for what is derived, which they make anew. */
    private static final List<String> SINCE_SCHEMA_4 = List.of(
            "DROP INDEX event_calibration",
            "DROP INDEX event_sequences",
            "DROP INDEX event_by_number",
            "ALTER TABLE event DROP COLUMN number",
            "ALTER TABLE event DROP COLUMN sum",
            "ALTER TABLE frame DROP COLUMN number",
            "ALTER TABLE frame DROP COLUMN sum",
            "ALTER TABLE capture DROP COLUMN frames_before",
            "ALTER TABLE capture DROP COLUMN sum",
            "DROP TABLE missing",
            "DROP TABLE outage",
            "DROP TABLE schema_number",
            "DROP TABLE civil_time",
            "ALTER TABLE capture DROP COLUMN is_dated",
            "DROP TABLE told_lines");

    @Test
    void shouldKnowWhatAnOlderProgramBroughtIn() throws IOException, SQLException {
        String file = HEADER + "}\n" + SOLVE;
        pipe(file);
        Path database = directory.resolve("home").resolve("practice.db");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
                Statement statement = connection.createStatement()) {
            for (String later : SINCE_SCHEMA_4) {
                statement.executeUpdate(later);
            }
            statement.executeUpdate("PRAGMA user_version = 4");
        }
        Files.delete(directory.resolve("home").resolve("practice.count"));

        assertThat(rig.run("show", "1-0", "--hand", "R U").code()).isZero();

        assertThat(pipe(file).out()).contains("capture 1; nothing was added");
        assertThat(pipe(rig.run("export").out()).out()).contains("capture 1; nothing was added");
    }

    private Outcome pipe(String text) {
        return rig.runPiped(text, "import", "-");
    }
}
