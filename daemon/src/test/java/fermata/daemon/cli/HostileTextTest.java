package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.bluetooth.LinkStatus;
import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.json.Json;
import fermata.daemon.text.Visible;
import java.nio.file.Path;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a cube calls itself, and what a file says, is never obeyed by the terminal that it is shown on. */
class HostileTextTest {
    /** Sets a terminal's title, clears it, turns the writing round, and goes on in a line that looks like ours. */
    private static final String HOSTILE = "\u001b]0;gone\u0007\u009b2J\u202egalley\u2069\u0085\udb40\udc41cube";

    @TempDir
    Path directory;

    private static void assertPlain(String shown) {
        assertThat(shown.lines()
                        .filter(line ->
                                line.codePoints().anyMatch(point -> point != '\t' && Visible.isInvisible(point))))
                .isEmpty();
    }

    @Test
    void shouldShowTheNameOfANeighbourWithoutObeyingIt() {
        LinkStatus status = new LinkStatus(LinkStatus.State.LISTENING, HOSTILE + "\nstopped: all is lost");
        assertThat(status.detail())
                .contains("<1B>]0;gone<07><9B>2J<202E>galley")
                .contains("<E0041>cube<0A>stopped");
        assertPlain(status.detail());
    }

    @Test
    void shouldShowTheNameInTheLogWithinItsLine() {
        LogRecord told = new LogRecord(Level.WARNING, "cannot connect to {0}");
        told.setParameters(new Object[] {HOSTILE + "\nWARNING: a line of its own"});
        told.setThrown(new IllegalStateException(HOSTILE));
        String shown = new Logs.VisibleLines().format(told);
        assertPlain(shown);
        assertThat(shown.lines().filter(line -> line.startsWith("WARNING"))).hasSize(1);
    }

    @Test
    void shouldShowWhatStandsInAFileWithoutObeyingIt() {
        CommandRig rig = new CommandRig(directory.resolve("home"));
        for (String line : List.of(
                HOSTILE,
                "{\"format\":\"" + Json.write(HOSTILE).substring(1) + "}",
                "{\"scramble\":\"" + HOSTILE + "\"")) {
            Outcome outcome = rig.runPiped(line, "import", "-");
            assertThat(outcome.code()).isEqualTo(2);
            assertThat(outcome.err()).contains("standard input, line 1");
            assertPlain(outcome.err());
        }
    }

    @Test
    void shouldGiveNamesBackAsTheyCameInEscapedWhenTheyAreExported() {
        CommandRig rig = new CommandRig(directory.resolve("home"));
        String header = Json.object()
                .put("format", "turn-stream")
                .put("version", 1)
                .put("clock", "none")
                .put("hand", "left")
                .put("solver", HOSTILE)
                .toString();
        assertThat(rig.runPiped(header + "\n{\"turn\":\"R\"}\n", "import", "-").code())
                .isZero();
        Outcome export = rig.run("export", "--with-names");
        assertPlain(export.out());
        assertThat(Json.read(export.lines().get(0)).get("solver").stringValue()).isEqualTo(HOSTILE);
    }

    @ParameterizedTest
    @ValueSource(strings = {"21e3086166919", "1e-3086166919", "1e2147483648"})
    void shouldNameLineFieldAndValueWhenANumberIsBeyondAllNumbers(String number) {
        Outcome outcome = new CommandRig(directory.resolve("home"))
                .runPiped(
                        "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\",\"hand\":\"left\"}\n"
                                + "{\"turn\":\"R\",\"at\":" + number + "}\n",
                        "import",
                        "-");
        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains("standard input, line 2: at is " + number + ", expected");
    }

    /** Found by spoiled files. */
    @ParameterizedTest
    @ValueSource(strings = {"1e999", "-1e999", "1e-999", "1e999999999"})
    void shouldNameLineFieldAndValueWhenAnOrientationIsBeyondAllDoubles(String number) {
        Outcome outcome = new CommandRig(directory.resolve("home"))
                .runPiped(
                        "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\",\"hand\":\"left\"}\n"
                                + "{\"orientation\":[" + number + ",0,0,0],\"at\":1}\n",
                        "import",
                        "-");
        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err())
                .contains("standard input, line 2: orientation is [")
                .contains("expected four numbers w, x, y, z that make a quaternion of length 1");
    }

    @ParameterizedTest
    @ValueSource(strings = {",\"text\":\"\"", ",\"text\":\" \"", ""})
    void shouldNameLineFieldAndValueWhenAScrambleIsAnnouncedWithoutWords(String text) {
        Outcome outcome = new CommandRig(directory.resolve("home"))
                .runPiped(
                        "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"none\",\"hand\":\"left\"}\n"
                                + "{\"mark\":\"scramble\"" + text + "}\n",
                        "import",
                        "-");
        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err())
                .contains("standard input, line 2: text is")
                .contains("expected moves in WCA notation");
    }
}
