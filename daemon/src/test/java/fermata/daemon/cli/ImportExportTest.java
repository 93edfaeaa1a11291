package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.demo.Rehearsal;
import fermata.decoder.notation.Sequence;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.JsonNode;

class ImportExportTest {
    private static final String HEADER =
            "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\",\"hand\":\"left\"";

    @TempDir
    Path directory;

    private CommandRig rig;

    @BeforeEach
    void setUp() {
        rig = new CommandRig(directory.resolve("home"));
    }

    @Test
    void shouldImportEveryPublicSolveAndFindItSolved() throws IOException {
        Path file = directory.resolve("solves.jsonl");
        int lines;
        try (InputStream in = getClass().getResourceAsStream("/fermata/fixtures/solves/solves.jsonl")) {
            byte[] bytes = in.readAllBytes();
            lines = (int) new String(bytes, StandardCharsets.UTF_8).lines().count();
            Files.write(file, bytes);
        }

        JsonNode imported = rig.run("import", "--json", file.toString()).json();
        JsonNode solves = rig.run("solves", "--json").json().get("solves");

        assertThat(imported.get("streams").intValue()).isEqualTo(lines);
        assertThat(solves).hasSize(lines).allSatisfy(solve -> {
            assertThat(solve.get("solved").booleanValue()).as(solve.toString()).isTrue();
            assertThat(solve.get("time_us").isNull()).isTrue();
        });
        assertThat(rig.run("night", "--json").json().get("solves").intValue())
                .as("a solve without a clock counts in no night")
                .isZero();
    }

    @Test
    void shouldBackUpWhatAnotherHomeCanRead() throws IOException {
        Files.write(directory.resolve("evening.jsonl"), Rehearsal.evening(3, 9).lines());
        rig.run("import", directory.resolve("evening.jsonl").toString());
        Path file = directory.resolve("copy.db");

        assertThat(rig.run("backup", file.toString()).out()).isEqualTo(file + ": " + Files.size(file) + " bytes\n");
        Files.createDirectories(directory.resolve("restored"));
        Files.move(file, directory.resolve("restored").resolve("practice.db"));

        CommandRig restored = new CommandRig(directory.resolve("restored"));
        assertThat(restored.run("export", "--with-names").out())
                .isEqualTo(rig.run("export", "--with-names").out());
    }

    @Test
    void shouldExportAgainWhatWasExportedAndImported() throws IOException {
        Files.write(directory.resolve("evening.jsonl"), Rehearsal.evening(3, 9).lines());
        Files.writeString(
                directory.resolve("solves.jsonl"),
                "{\"id\":\"x1\",\"hands\":\"one\",\"method\":\"other\",\"scramble\":\"R U\","
                        + "\"lines\":[{\"moves\":\"y U' B'\",\"stage\":\"other\"}],\"time_s\":1.50}");
        rig.run("import", directory.resolve("evening.jsonl").toString());
        rig.run("import", directory.resolve("solves.jsonl").toString());
        CommandRig other = new CommandRig(directory.resolve("other"));

        Outcome first = rig.run("export");
        Outcome imported = other.runPiped(first.out(), "import", "-");
        Outcome second = other.run("export");

        assertThat(first.lines()).hasSizeGreaterThan(200);
        assertThat(imported.out()).startsWith("2 streams with ");
        assertThat(second.out()).isEqualTo(first.out());
        assertThat(other.run("solves", "--json").out())
                .isEqualTo(rig.run("solves", "--json").out());
    }

    @Test
    void shouldLeaveNamesOutOfAnExportUnlessTold() throws IOException {
        Path file = directory.resolve("named.jsonl");
        Files.writeString(file, HEADER + ",\"cube\":\"galley cube\",\"solver\":\"cook\"}\n{\"turn\":\"R\",\"at\":1}\n");
        rig.run("import", file.toString());

        assertThat(rig.run("export").out()).doesNotContain("cook").doesNotContain("galley");
        assertThat(rig.run("export").err()).contains("without the names");
        assertThat(rig.run("export", "--with-names").out()).contains("cook").contains("galley cube");
    }

    @Test
    void shouldNotWriteOverAFile() throws IOException {
        Path file = directory.resolve("stream.jsonl");
        Files.writeString(file, HEADER + "}\n{\"turn\":\"R\",\"at\":1}\n");
        rig.run("import", file.toString());

        Outcome outcome = rig.run("export", "--out", file.toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains(file.toString()).contains("it is there already");
        assertThat(file).content().startsWith(HEADER);
    }

    @Test
    void shouldLeaveNoHalfOfAnExport() throws Exception {
        rig.runPiped(HEADER + "}\n{\"turn\":\"R\",\"at\":1}\n" + HEADER + "}\n", "import", "-");
        Path database = directory.resolve("home").resolve("practice.db");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("UPDATE capture SET header = 'torn' WHERE id = 2");
        }
        Path kept = Files.createDirectory(directory.resolve("kept"));

        Outcome outcome =
                rig.run("export", "--out", kept.resolve("streams.jsonl").toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(kept).isEmptyDirectory();
    }

    @ParameterizedTest
    @ValueSource(strings = {"R U R' U' F2", "F' L2 D B R2"})
    void shouldStartScrambledWhenTheStreamDoesNotDoItsScramble(String scramble) throws IOException {
        List<String> lines = new ArrayList<>(List.of(HEADER + ",\"scramble\":\"" + scramble + "\"}"));
        lines.addAll(timed(Sequence.parse(scramble).inverse().toString(), 1));

        JsonNode solve = importedSolve(lines);

        assertThat(solve.get("solved").booleanValue()).isTrue();
        assertThat(solve.get("scramble").stringValue()).isEqualTo(scramble);
        assertThat(solve.get("turns").size()).isEqualTo(5);
        assertThat(solve.get("gap_us").isNull()).isTrue();
    }

    @Test
    void shouldStartSolvedWhenTheStreamDoesItsScramble() throws IOException {
        List<String> lines = new ArrayList<>(List.of(HEADER + ",\"scramble\":\"R U R' U' F2\"}"));
        lines.addAll(timed("R U R' U' F2 F2 U R U' R'", 1));

        JsonNode solve = importedSolve(lines);

        assertThat(solve.get("solved").booleanValue()).isTrue();
        assertThat(solve.get("id").stringValue()).isEqualTo("1-5");
        assertThat(solve.get("gap_us").longValue()).isEqualTo(200_000);
        assertThat(solve.get("time_us").longValue()).isEqualTo(800_000);
    }

    @Test
    void shouldKeepNothingOfAFileWithAWrongLine() throws IOException {
        Path good = directory.resolve("good.jsonl");
        Files.writeString(good, HEADER + "}\n{\"turn\":\"R\",\"at\":1}\n");
        Path bad = directory.resolve("bad.jsonl");
        Files.writeString(bad, HEADER + "}\n{\"turn\":\"R\",\"at\":1}\n" + HEADER + "}\n{\"turn\":\"K\",\"at\":2}\n");
        rig.run("import", good.toString());
        String before = rig.run("export").out();

        Outcome outcome = rig.run("import", bad.toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err().lines())
                .singleElement()
                .asString()
                .startsWith("fermata import: " + bad + ", line 4: turn is \"K\", expected a turn such as R, R2 or R'");
        assertThat(rig.run("export").out()).isEqualTo(before);
    }

    @Test
    void shouldSayWhyAFileCannotBeRead() {
        Outcome outcome = rig.run("import", directory.resolve("none.jsonl").toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains("none.jsonl: there is no such file");
    }

    private JsonNode importedSolve(List<String> lines) throws IOException {
        Path file = directory.resolve("stream.jsonl");
        Files.write(file, lines);
        JsonNode imported = rig.run("import", "--json", file.toString()).json();
        assertThat(imported.get("solves")).hasSize(1);
        return rig.run("show", imported.get("solves").get(0).stringValue(), "--json")
                .json();
    }

    private static List<String> timed(String turns, int from) {
        List<String> lines = new ArrayList<>();
        for (String turn : turns.split(" ")) {
            lines.add("{\"turn\":\"" + turn + "\",\"at\":" + (from + lines.size()) * 200_000 + "}");
        }
        return lines;
    }
}
