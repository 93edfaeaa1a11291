package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.calibration.CalibrationDrill;
import fermata.analysis.calibration.Exercise;
import fermata.analysis.calibration.TransitionKind;
import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.character.CuberStyle;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/** A drill as a rehearsal cuber's pace and pauses would do it, read from a file and from the store. */
class CalibrateTest {
    private static final String HEADER =
            "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\",\"hand\":\"%s\"}";

    @TempDir
    Path directory;

    private CommandRig rig;

    @BeforeEach
    void setUp() {
        rig = new CommandRig(directory.resolve("home"));
    }

    private static List<String> stream(CalibrationDrill drill, String hand, boolean announced) {
        SplittableRandom random = new SplittableRandom(4);
        CuberStyle style = CuberStyle.cook();
        List<String> lines = new ArrayList<>(List.of(String.format(HEADER, hand)));
        if (announced) {
            lines.add("{\"mark\":\"note\",\"text\":\"drill after the last crossing\",\"at\":0}");
        }
        double now = 0;
        for (int time = 0; time < CalibrationDrill.TIMES; time++) {
            for (Exercise exercise : drill.exercises()) {
                List<Turn> turns = exercise.turns(Orientation.ofIndex(random.nextInt(24)));
                for (int turn = 0; turn < turns.size(); turn++) {
                    TransitionKind kind =
                            turn == 0 ? TransitionKind.FLUENT : exercise.kinds().get(turn - 1);
                    double pause = kind == TransitionKind.REGRIP
                            ? style.pauses().regripMicros()
                            : kind == TransitionKind.ROTATION ? style.pauses().rotationMicros() : 0;
                    now += (turn == 0 ? 2_000_000 : style.pace().adjacentMicros() + pause)
                            * Math.exp(style.pace().spread() * random.nextGaussian());
                    lines.add("{\"turn\":\"" + turns.get(turn) + "\",\"at\":" + (long) now + "}");
                }
            }
        }
        return lines;
    }

    private static String text(List<String> lines) {
        return String.join("\n", lines) + "\n";
    }

    private static JsonNode times(JsonNode view, String kind) {
        for (JsonNode times : view.get("times")) {
            if (times.get("kind").stringValue().equals(kind)) {
                return times;
            }
        }
        throw new IllegalStateException(kind);
    }

    @Test
    void shouldLearnTheTimesOfTheDrillFromAFile() throws IOException {
        JsonNode view = rig.runPiped(text(stream(CalibrationDrill.LEFT, "left", true)), "calibrate", "-", "--json")
                .json();

        assertThat(DocumentedShapes.found(view)).isEqualTo(DocumentedShapes.promised("calibrate"));
        view.get("exercises")
                .forEach(exercise -> assertThat(exercise.get("done").intValue()).isEqualTo(CalibrationDrill.TIMES));
        // 245 ms from turn to turn, with a regrip 170 ms more: 24 intervals of log deviation 0.24, so within a tenth.
        assertThat(times(view, "fluent").get("median_us").longValue()).isBetween(225_000L, 265_000L);
        assertThat(times(view, "regrip").get("median_us").longValue()).isBetween(373_000L, 457_000L);
        assertThat(times(view, "regrip").get("separation").doubleValue()).isGreaterThan(0.85);
        assertThat(times(view, "wide").get("separation").doubleValue()).isBetween(0.35, 0.65);
    }

    @Test
    void shouldReadTheNewestCaptureWithADrillAndTheOneThatIsNamed() {
        rig.runPiped(text(stream(CalibrationDrill.LEFT, "left", true)), "import", "-");
        rig.runPiped(text(stream(CalibrationDrill.LEFT, "left", false)), "import", "-");

        assertThat(rig.run("calibrate", "--json").json().get("source").stringValue())
                .isEqualTo("capture 1");
        JsonNode named = rig.run("calibrate", "--capture", "2", "--json").json();
        assertThat(named.get("source").stringValue()).isEqualTo("capture 2");
        assertThat(named.get("times"))
                .isEqualTo(rig.run("calibrate", "--json").json().get("times"));
    }

    @Test
    void shouldKeepWhatACaptureTaughtOnceAndHandItOn() {
        rig.runPiped(text(stream(CalibrationDrill.LEFT, "left", true)), "import", "-");

        JsonNode first = rig.run("calibrate", "--json").json();
        rig.run("calibrate");
        String exported = rig.run("export").out();

        assertThat(first.get("kept").booleanValue()).isTrue();
        assertThat(exported.lines().filter(line -> line.startsWith("{\"calibration\":\"left\"")))
                .hasSize(1)
                .allSatisfy(line -> assertThat(line)
                        .contains("{\"kind\":\"rotation\",\"count\":" + 2 * CalibrationDrill.TIMES + ","));
        CommandRig other = new CommandRig(directory.resolve("other"));
        other.runPiped(exported, "import", "-");
        assertThat(other.run("export").out()).isEqualTo(exported);
    }

    @Test
    void shouldOnlyLookAtAFile() {
        rig.runPiped(text(stream(CalibrationDrill.LEFT, "left", true)), "import", "-");

        Outcome outcome = rig.runPiped(text(stream(CalibrationDrill.LEFT, "left", true)), "calibrate", "-");

        assertThat(outcome.out()).contains("Not kept");
        assertThat(rig.run("export").out()).doesNotContain("\"calibration\"");
    }

    @Test
    void shouldSayThatNothingIsKeptWhereSomebodyElseWrites() {
        rig.runPiped(text(stream(CalibrationDrill.LEFT, "left", true)), "import", "-");
        Outcome outcome;
        try (Store writing = Store.openForWriting(new Home(directory.resolve("home")), LocalDateTime::now)) {
            assertThat(writing.isWritable()).isTrue();
            outcome = rig.run("calibrate", "--json");
        }

        assertThat(outcome.code()).isZero();
        assertThat(outcome.json().get("kept").booleanValue()).isFalse();
        assertThat(outcome.err()).contains("not kept").contains(directory.toString());
    }

    @Test
    void shouldNameWhatIsWrongInAKeptCalibration() {
        String header = String.format(HEADER, "left") + "\n";
        String kind = "{\"kind\":\"fluent\",\"count\":1,\"median_us\":9}";
        List<String> wrong = List.of(
                "{\"calibration\":\"two\",\"times\":[" + kind + "],\"at\":0}",
                "{\"calibration\":\"left\",\"times\":[],\"at\":0}",
                "{\"calibration\":\"left\",\"times\":[" + kind + "," + kind + "],\"at\":0}",
                "{\"calibration\":\"left\",\"times\":[{\"kind\":\"wide\",\"count\":0,\"median_us\":9}],\"at\":0}");

        assertThat(wrong).allSatisfy(line -> {
            Outcome outcome = rig.runPiped(header + line + "\n", "import", "-");
            assertThat(outcome.code()).isEqualTo(2);
            assertThat(outcome.err()).contains("line 2");
        });
    }

    @Test
    void shouldLookOnlyWhereADrillIsAnnounced() {
        List<String> lines = stream(CalibrationDrill.LEFT, "left", false);
        lines.add("{\"mark\":\"note\",\"text\":\"drill\",\"at\":999999999}");

        Outcome outcome = rig.runPiped(text(lines), "calibrate", "-");

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err())
                .contains("no exercise of the left hand's drill")
                .contains("--drill");
    }

    @Test
    void shouldTakeTheHandFromTheStreamOrFromTheOption() {
        String right = text(stream(CalibrationDrill.RIGHT, "right", false));

        assertThat(rig.runPiped(right, "calibrate", "-", "--json")
                        .json()
                        .get("hand")
                        .stringValue())
                .isEqualTo("right");
        assertThat(rig.runPiped(right, "calibrate", "-", "--hand", "left").code())
                .isEqualTo(2);
    }

    @Test
    void shouldPrintWithinEightyColumns() {
        List<String> lines = new ArrayList<>();
        lines.addAll(rig.runPiped(text(stream(CalibrationDrill.LEFT, "left", true)), "calibrate", "-")
                .lines());
        lines.addAll(rig.run("calibrate", "--drill").lines());
        lines.addAll(rig.run("calibrate", "--drill", "--hand", "right").lines());

        assertThat(lines)
                .hasSizeGreaterThan(20)
                .allSatisfy(
                        line -> assertThat(line).hasSizeLessThanOrEqualTo(80).doesNotEndWith(" "));
        assertThat(lines).anyMatch(line -> line.contains("L' U' L' U'"));
    }

    @Test
    void shouldSayWhatIsMissing() {
        String untimed = "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"none\",\"hand\":\"left\"}\n"
                + "{\"turn\":\"R\"}\n";
        rig.runPiped(untimed, "import", "-");

        assertThat(rig.runPiped(untimed, "calibrate", "-").err()).contains("no times");
        assertThat(rig.run("calibrate").err())
                .contains("note that says \"drill\"")
                .contains("--capture");
        assertThat(rig.run("calibrate", "--capture", "7").err()).contains("no capture 7");
        assertThat(rig.run("calibrate", "--hand", "both").code()).isEqualTo(2);
        assertThat(rig.runPiped("{}\n", "calibrate", "-").err()).contains("line 1");
    }
}
