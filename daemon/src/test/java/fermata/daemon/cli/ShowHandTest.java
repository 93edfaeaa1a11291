package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.demo.Rehearsal;
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
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** Written solves and a rehearsed evening, shown as the hand did them, and corrected. */
class ShowHandTest {
    private static final int SOLVES = 3;

    @TempDir
    Path directory;

    private CommandRig rig;
    private List<String> ids;

    @BeforeEach
    void bringWrittenSolvesIn() throws IOException {
        rig = new CommandRig(directory.resolve("home"));
        Path file = directory.resolve("solves.jsonl");
        try (InputStream in = getClass().getResourceAsStream("/fermata/fixtures/solves/solves.jsonl")) {
            Files.write(
                    file,
                    new String(in.readAllBytes(), StandardCharsets.UTF_8)
                            .lines()
                            .limit(SOLVES)
                            .toList());
        }
        ids = new ArrayList<>();
        rig.run("import", file.toString(), "--json").json().get("solves").forEach(id -> ids.add(id.stringValue()));
    }

    private JsonNode shown(String id) {
        return rig.run("show", id, "--json").json();
    }

    private static List<Turn> core(JsonNode solve) {
        List<Turn> turns = new ArrayList<>();
        solve.get("turns").forEach(turn -> turns.add(Turn.parse(turn.get("core").stringValue())));
        return turns;
    }

    /** The words that lie in a shown solve: holds and moves must make the turns that were heard. */
    private static String words(JsonNode solve) {
        List<String> words = new ArrayList<>();
        Orientation first = hold(solve, 0);
        words.add(first.word());
        String last = "";
        for (int turn = 0; turn < solve.get("turns").size(); turn++) {
            for (JsonNode rotation : solve.get("rotations")) {
                if (rotation.get("before_turn").intValue() == turn) {
                    words.add(rotation.get("rotation").stringValue());
                }
            }
            String hand = solve.get("turns").get(turn).get("hand").stringValue();
            boolean slice = "MES".indexOf(hand.charAt(0)) >= 0;
            if (!slice || !last.equals(hand + hold(solve, turn))) {
                words.add(hand);
            }
            last = slice ? hand + hold(solve, turn) : "";
        }
        return String.join(" ", words).strip();
    }

    private static Orientation hold(JsonNode solve, int turn) {
        return Orientation.ofLetters(solve.get("turns").get(turn).get("hold").stringValue());
    }

    @Test
    void shouldTellHoldsAndMovesThatMakeTheHeardTurns() {
        for (String id : ids) {
            JsonNode solve = shown(id);

            assertThat(Sequence.parse(words(solve)).walk(Orientation.IDENTITY).turns())
                    .isEqualTo(core(solve));
            assertThat(solve.get("holds").get("known").stringValue()).isEqualTo("inferred");
            solve.get("turns")
                    .forEach(turn -> assertThat(turn.get("p").doubleValue()).isBetween(0.0, 1.0));
        }
    }

    @Test
    void shouldShowWhatYouSaidWithoutADoubt() {
        JsonNode before = shown(ids.get(0));
        String said = Sequence.ofTurns(core(before)).toString();

        Outcome outcome = rig.run("show", ids.get(0), "--hand", said);

        assertThat(outcome.code()).isZero();
        assertThat(outcome.out()).contains("as you said").doesNotContain("likely");
        assertThat(outcome.lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(80));
        JsonNode after = shown(ids.get(0));
        assertThat(after.get("holds").get("known").stringValue()).isEqualTo("stated");
        assertThat(words(after)).isEqualTo(said);
        after.get("turns")
                .forEach(turn -> assertThat(turn.get("p").doubleValue()).isEqualTo(1));
        // What had been inferred stays beside it, to be compared.
        JsonNode inferred = after.get("holds").get("inferred");
        assertThat(inferred.get("rotations")).isEqualTo(before.get("rotations"));
        for (int turn = 0; turn < before.get("turns").size(); turn++) {
            for (String member : List.of("hand", "hold", "p")) {
                assertThat(inferred.get("turns").get(turn).get(member))
                        .isEqualTo(before.get("turns").get(turn).get(member));
            }
        }
        assertThat(before.get("holds").get("inferred").isNull()).isTrue();
    }

    @Test
    void shouldNameTheFirstTurnThatDiffersAndKeepNothing() {
        JsonNode before = shown(ids.get(0));
        List<Turn> turns = new ArrayList<>(core(before));
        Turn wrong = Turn.of(turns.get(4).face().opposite(), 1);
        turns.set(4, wrong);

        Outcome outcome =
                rig.run("show", ids.get(0), "--hand", Sequence.ofTurns(turns).toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err())
                .contains("turn 4 of solve " + ids.get(0))
                .contains("was " + core(before).get(4))
                .contains("make " + wrong);
        assertThat(shown(ids.get(0))).isEqualTo(before);
        assertThat(rig.run("show", ids.get(0), "--hand", "R K").err())
                .contains("column 3")
                .contains("K");
        assertThat(rig.run("show", ids.get(0), "--hand", "R U R'").code()).isEqualTo(2);
    }

    @Test
    void shouldTeachTheSolversOtherSolvesAndBeTakenBack() {
        JsonNode other = shown(ids.get(1));
        String said = Sequence.ofTurns(core(shown(ids.get(0)))).toString();

        rig.run("show", ids.get(0), "--hand", said);

        JsonNode taught = shown(ids.get(1));
        assertThat(taught.get("holds").get("corrections").intValue()).isEqualTo(1);
        assertThat(taught.get("turns")).isNotEqualTo(other.get("turns"));
        rig.run("show", ids.get(0), "--hand", "");
        assertThat(shown(ids.get(1))).isEqualTo(other);
        assertThat(shown(ids.get(0)).get("holds").get("known").stringValue()).isEqualTo("inferred");
    }

    @Test
    void shouldKeepCorrectionsThroughExportAndImport() throws IOException {
        String said = Sequence.ofTurns(core(shown(ids.get(0)))).toString();
        rig.run("show", ids.get(0), "--hand", said);
        String exported = rig.run("export").out();
        CommandRig second = new CommandRig(directory.resolve("second"));

        second.runPiped(exported, "import", "-");

        assertThat(exported).contains("{\"hand\":\"" + said + "\",\"first_turn\":0}");
        assertThat(second.run("export").out()).isEqualTo(exported);
        assertThat(second.run("show", ids.get(0), "--json").json()).isEqualTo(shown(ids.get(0)));
    }

    @Test
    void shouldCorrectATimedEveningAsWell() throws IOException {
        Path file = directory.resolve("evening.jsonl");
        Files.write(file, Rehearsal.evening(1, 3).lines());
        String id = rig.run("import", file.toString(), "--json")
                .json()
                .get("solves")
                .get(0)
                .stringValue();
        String said = Sequence.ofTurns(core(shown(id))).toString();

        assertThat(rig.run("show", id, "--hand", said, "--json").code()).isZero();

        assertThat(words(shown(id))).isEqualTo(said);
        CommandRig second = new CommandRig(directory.resolve("second"));
        String exported = rig.run("export", id.substring(0, id.indexOf('-'))).out();
        assertThat(second.runPiped(exported, "import", "-").code()).isZero();
        assertThat(second.run("export").out()).isEqualTo(exported);
    }

    @Test
    void shouldStillPrintTurnsByTheCentresWhenAsked() {
        String first = core(shown(ids.get(0))).stream()
                .limit(4)
                .map(Turn::toString)
                .reduce((one, two) -> one + " " + two)
                .orElseThrow();

        assertThat(rig.run("show", ids.get(0), "--core").out())
                .contains("turns are named by the centres")
                .contains(first);
        assertThat(rig.run("show", ids.get(0)).out()).contains("inferred; begun");
    }

    @Test
    void shouldRefuseALineWhoseWordsAreNoMoves() {
        String stream = "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"none\",\"hand\":\"left\"}\n"
                + "{\"turn\":\"R\"}\n{\"hand\":\"R Q\",\"first_turn\":0}\n";

        Outcome outcome = rig.runPiped(stream, "import", "-");

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains("line 3: hand is \"R Q\", expected moves in WCA notation");
    }

    /** Somebody may play with a scrambled cube for hours; a reading would take all memory, for every later command. */
    @Test
    void shouldReadNoHandInMoreTurnsThanASolveHas() {
        StringBuilder played = new StringBuilder(
                "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\",\"hand\":\"left\"}\n");
        played.append("{\"mark\":\"scramble\",\"text\":\"R U F2\",\"at\":0}\n");
        List<String> turns = new ArrayList<>(List.of("R", "U", "F2"));
        IntStream.range(0, 1001).forEach(turn -> turns.add(turn % 2 == 0 ? "L" : "U'"));
        for (int turn = 0; turn < turns.size(); turn++) {
            played.append("{\"turn\":\"" + turns.get(turn) + "\",\"at\":" + 200_000L * (turn + 1) + "}\n");
        }
        JsonNode imported =
                rig.runPiped(played.toString(), "import", "-", "--json").json();
        String id = imported.get("solves").get(0).stringValue();

        assertThat(shown(id).get("turns")).hasSize(1001);
        assertThat(shown(id).get("holds").get("known").stringValue()).isEqualTo("untold");
        assertThat(rig.run("show", id).out()).contains("untold, as no solve has so many turns");
        assertThat(rig.run("show", id, "--hand", "x2").err()).contains("solve " + id + " has more than 1000 turns");
    }
}
