package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;

/** The last layers of written solves, read by what is common and by what their solver says. */
class SequencesTest {
    @TempDir
    Path directory;

    private CommandRig rig;
    private String id;

    @BeforeEach
    void bringWrittenSolvesIn() throws IOException {
        rig = new CommandRig(directory.resolve("home"));
        try (InputStream in = getClass().getResourceAsStream("/fermata/fixtures/solves/solves.jsonl")) {
            String two = new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .limit(2)
                    .reduce("", (text, line) -> text + line + "\n");
            id = rig.runPiped(two, "import", "-", "--json")
                    .json()
                    .get("solves")
                    .get(0)
                    .stringValue();
        }
    }

    private JsonNode turns() {
        return rig.run("show", id, "--json").json().get("turns");
    }

    private int firstOfLastLayer() {
        for (JsonNode stage : rig.run("show", id, "--json").json().get("stages")) {
            if (stage.get("name").stringValue().equals("orient")) {
                return stage.get("from").intValue();
            }
        }
        throw new IllegalStateException("no orientation in " + id);
    }

    private static Orientation hold(JsonNode turns, int turn) {
        return Orientation.ofLetters(turns.get(turn).get("hold").stringValue());
    }

    /** The last layer as somebody would turn it who stands to the side of the cube as it was read. */
    private static String fromTheSide(JsonNode turns, int first) {
        Orientation side = hold(turns, first).then(Orientation.turning(Face.U, 1));
        List<Turn> seen = new ArrayList<>();
        for (int turn = first; turn < turns.size(); turn++) {
            seen.add(side.toHand(Turn.parse(turns.get(turn).get("core").stringValue())));
        }
        return Sequence.ofTurns(seen).toString();
    }

    @Test
    void shouldReadSolvesByWhatTheirSolverTyped() throws IOException {
        int first = firstOfLastLayer();
        JsonNode before = turns();
        String words = fromTheSide(before, first);
        Path file = Files.writeString(directory.resolve("mine.txt"), "# by the side\n\n" + words + "  # when I can\n");

        Outcome kept = rig.run("sequences", file.toString());

        assertThat(kept.code()).as(kept.err()).isZero();
        assertThat(kept.out()).isEqualTo(words + "\n");
        // A rotation about U may stand on either side of a turn of U, so what is looked at is the last turn.
        int last = before.size() - 1;
        assertThat(hold(turns(), last)).isEqualTo(hold(before, last).then(Orientation.turning(Face.U, 1)));

        Files.writeString(file, "# no longer\n");
        rig.run("sequences", file.toString());
        assertThat(turns()).isEqualTo(before);
        assertThat(rig.run("sequences").out()).startsWith("# none typed");
    }

    @Test
    void shouldHandOnWhatWasTypedAndKeepItOnce() {
        rig.runPiped("R U R' U R U2 R'", "sequences", "-");
        rig.runPiped("R U R' U R U2 R'", "sequences", "-");
        String exported = rig.run("export").out();

        assertThat(exported.lines().filter(line -> line.startsWith("{\"sequences\"")))
                .containsExactly("{\"sequences\":[\"R U R' U R U2 R'\"]}");
        CommandRig other = new CommandRig(directory.resolve("other"));
        other.runPiped(exported, "import", "-");
        assertThat(other.run("sequences").out()).isEqualTo("R U R' U R U2 R'\n");
        assertThat(other.run("export").out()).isEqualTo(exported);
    }

    @Test
    void shouldLearnTheLastLayerOfASolveThatWasSetRight() throws IOException {
        rig.runPiped("R U2 R' U' R U' R'", "sequences", "-");
        List<Turn> core = new ArrayList<>();
        turns().forEach(turn -> core.add(Turn.parse(turn.get("core").stringValue())));
        rig.run("show", id, "--hand", Sequence.ofTurns(core).toString());
        repeatALastLayer();

        Outcome outcome = rig.run("sequences", "--json");

        JsonNode view = outcome.json();
        assertThat(DocumentedShapes.found(view)).isEqualTo(DocumentedShapes.promised("sequences"));
        JsonNode learned = view.get("learned").get(0);
        assertThat(learned.get("solve").stringValue()).isEqualTo(id);
        assertThat(Sequence.ofTurns(core).toString())
                .endsWith(learned.get("words").stringValue());
        assertThat(rig.run("sequences").out()).contains("# from " + id);
    }

    private void repeatALastLayer() {
        for (int solve = 0; solve < 4; solve++) {
            rig.runPiped("""
                    {"format":"turn-stream","version":1,"clock":"none","hand":"left","scramble":"R U2 R' U' R U' R'",
                     "started_at":"2026-11-24T20:0%d:00Z"}
                    {"turn":"R"}
                    {"turn":"U"}
                    {"turn":"R'"}
                    {"turn":"U"}
                    {"turn":"R"}
                    {"turn":"U2"}
                    {"turn":"R'"}
                    """.formatted(solve).replace(",\n ", ","), "import", "-");
        }
    }

    /** By hand: readings of 0.995, of which a tenth is not believed, four of them counted as two: 0.987. */
    @Test
    void shouldListWhatSolvesRepeatThatNobodySetRightAndNotTakeItForTyped() {
        repeatALastLayer();

        Outcome listed = rig.run("sequences");
        JsonNode repeated =
                rig.run("sequences", "--json").json().get("repeated").get(0);

        assertThat(listed.out()).isEqualTo("# R U R' U R U2 R'   4 times, 0.99\n");
        assertThat(repeated.get("hand").stringValue()).isEqualTo("left");
        assertThat(repeated.get("words").stringValue()).isEqualTo("R U R' U R U2 R'");
        assertThat(repeated.get("seen").intValue()).isEqualTo(4);
        assertThat(repeated.get("alike").intValue()).isEqualTo(4);
        assertThat(repeated.get("p").doubleValue()).isBetween(0.97, 0.99);
        assertThat(repeated.get("sure").booleanValue()).isTrue();
        assertThat(rig.runPiped(listed.out(), "sequences", "-").out()).isEqualTo(listed.out());
        assertThat(rig.run("export").out()).doesNotContain("\"sequences\"");

        assertThat(rig.runPiped("R U R' U R U2 R'", "sequences", "-").out()).isEqualTo("R U R' U R U2 R'\n");
    }

    @ParameterizedTest
    @CsvSource({
        "R U R' U R U2 Q, 'line 1', Q",
        "'#\nR U', 'line 2', fewer than 5",
        "R U (R', 'line 1', ''",
    })
    void shouldNameTheLineThatIsNoSequenceAndKeepNothing(String text, String line, String named) {
        Outcome outcome = rig.runPiped(text, "sequences", "-");

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains(line, named);
        assertThat(rig.run("export").out()).doesNotContain("\"sequences\"");
    }

    @Test
    void shouldSayThatNothingIsKnownOfASolver() {
        Outcome outcome = rig.runPiped("R U R' U R U2 R'", "sequences", "-", "--solver", "pilot");

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains("\"pilot\"");
        assertThat(new CommandRig(directory.resolve("none"))
                        .runPiped("R U R' U R U2 R'", "sequences", "-")
                        .code())
                .isEqualTo(2);
        assertThat(directory.resolve("none")).doesNotExist();
    }
}
