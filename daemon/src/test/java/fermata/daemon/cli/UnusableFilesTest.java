package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that are not there, not text, or not what they were: one line that says which and why. */
class UnusableFilesTest {
    private static final String EVENING = """
            {"format":"turn-stream","version":1,"clock":"device","hand":"left"}
            {"mark":"scramble","text":"R","at":0}
            {"turn":"R","at":1000000}
            {"turn":"R'","at":2000000}
            """;

    @TempDir
    Path directory;

    private CommandRig rig;

    @BeforeEach
    void practise() {
        rig = new CommandRig(directory.resolve("home"));
        assertThat(rig.runPiped(EVENING, "import", "-").code()).isZero();
    }

    private void assertSays(String message, String... arguments) {
        assertSays(message, rig.run(arguments));
    }

    private static void assertSays(String message, Outcome outcome) {
        assertThat(outcome.err()).endsWith(message + System.lineSeparator());
        assertThat(outcome.err().lines()).hasSize(1);
        assertThat(outcome.code()).isEqualTo(2);
    }

    @Test
    void shouldNameTheDirectoryThatIsMissing() {
        Path nowhere = directory.resolve("nowhere");
        Path page = nowhere.resolve("solve.html");

        assertSays("cannot write " + page + ": there is no directory " + nowhere, "show", "1-1", "--out", "" + page);
        Path streams = nowhere.resolve("streams.jsonl");
        assertSays("cannot write " + streams + ": there is no directory " + nowhere, "export", "--out", "" + streams);
        Path file = directory.resolve("none.jsonl");
        assertSays("cannot read " + file + ": there is no such file", "import", "" + file);
    }

    @ParameterizedTest
    @ValueSource(strings = {"x", "1-1", "1.5", "99999999999999999999"})
    void shouldSayHowACaptureIsNamed(String word) {
        assertSays("CAPTURE is " + word + ", expected the number of one: 3 for solve 3-412", "export", "1", word);
    }

    @Test
    void shouldNotTakeTheRootForAFile() {
        assertSays("--out /: the name must end in .html (a page) or .svg (a picture)", "show", "1-1", "--out", "/");
    }

    @Test
    void shouldSayThatAProfileIsNotText() throws IOException {
        Path profile = Files.write(directory.resolve("profile.json"), new byte[] {'{', (byte) 0xFF, '}'});

        assertSays(
                "cannot read " + profile + ": it is not UTF-8 text",
                CommandRig.runPlain("", "profile", "check", "" + profile));
    }

    @Test
    void shouldEndWhereAFileHasNoLines() {
        assertSays(
                "/dev/zero, line 1: is longer than 10000000 bytes, expected a JSON object on one line",
                "import",
                "/dev/zero");
    }

    /** As some editors write it. */
    @Test
    void shouldReadTextBehindAByteOrderMark() {
        assertThat(rig.runPiped("\uFEFF" + EVENING, "import", "-").code()).isZero();
        assertThat(rig.runPiped("\uFEFFR U R' U R U2 R'\n", "sequences", "-").code())
                .isZero();
        assertThat(rig.runPiped("", "sequences", "-").code()).isZero();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "null", "{", "[]", "{\"version\":1}", "{\"version\":1,\"browsers\":[{\"id\":\"a\"}]}"})
    void shouldSayWhichFileOfPairingsIsDamaged(String text) throws IOException {
        Path file = Files.writeString(directory.resolve("home").resolve("paired.json"), text);
        String message = file + " is damaged; delete it, and pair the browsers again";

        assertSays(message, "pair", "--list");
        assertSays(message, "pair", "--revoke", "12345678");
    }

    @Test
    void shouldNameTheFileOfPairingsThatCannotBeRead() throws IOException {
        Path file = Files.createDirectory(directory.resolve("home").resolve("paired.json"));

        assertSays("cannot read " + file + ": Is a directory", "pair", "--list");
    }
}
