package fermata.daemon.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.PracticeAnalysis;
import fermata.analysis.event.CaptureLog;
import fermata.daemon.cli.CommandRig;
import fermata.daemon.json.BadLineException;
import fermata.daemon.json.Json;
import fermata.daemon.text.Visible;
import fermata.daemon.turnfile.PracticeFile;
import fermata.daemon.turnfile.TurnStream;
import fermata.daemon.turnfile.WrittenSolve;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Spoiled files of practice: turn streams as they are exported, and reconstructions. Each is a practice that comes out
 * as it went in and can be analysed, or a complaint of one visible line that names the line of the file.
 */
class ImportFuzzTest {
    /** A group of moves may be repeated to 10,000 of them, each of which becomes an event. */
    private static final long MOST_BYTES = 400_000;
    /** Finding attempts in 10,000 turns of no meaning takes long and tells no more. */
    private static final int MOST_ANALYSED = 200;

    private static final String HEADER =
            "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\",\"hand\":\"left\","
                    + "\"cube\":\"galley cube\",\"solver\":\"cook\",\"started_at\":\"2026-11-24T20:04:05.123Z\","
                    + "\"zone\":\"Europe/Oslo\",\"truth\":{\"kind\":\"rehearsal\",\"x\":[1,2.5,null]}}\n";
    private static final String SOLVED = "UUUUUUUUURRRRRRRRRFFFFFFFFFDDDDDDDDDLLLLLLLLLBBBBBBBBB";
    private static final List<String> FILES = List.of(
            HEADER + "{\"mark\":\"scramble\",\"text\":\"R U\",\"at\":0}\n{\"turn\":\"R\",\"at\":1000000}\n"
                    + "{\"turn\":\"U\",\"at\":1200000}\n{\"turn\":\"U'\",\"at\":9000000}\n"
                    + "{\"turn\":\"R'\",\"source\":\"repaired\",\"at\":9300000}\n"
                    + "{\"verdict\":\"set_aside\",\"first_turn\":2,\"at\":9400000}\n"
                    + "{\"hand\":\"U' R'\",\"first_turn\":2,\"at\":9500000}\n",
            HEADER + "{\"gap\":3,\"at\":5}\n{\"gap\":\"unknown\",\"at\":6}\n{\"snapshot\":\"" + SOLVED
                    + "\",\"at\":7}\n"
                    + "{\"reference\":\"" + SOLVED + "\",\"at\":8}\n{\"orientation\":[1,0,0,0],\"at\":9}\n"
                    + "{\"turn\":\"F2\",\"at\":10}\n" + HEADER + "{\"turn\":\"B\",\"at\":1}\n",
            "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"none\",\"hand\":\"two\",\"scramble\":\"F2 L\"}\n"
                    + "{\"turn\":\"L'\"}\n{\"turn\":\"F2\"}\n{\"mark\":\"note\",\"text\":\"rough\"}\n",
            HEADER + "{\"calibration\":\"left\",\"times\":[{\"kind\":\"fluent\",\"count\":88,\"median_us\":245000},"
                    + "{\"kind\":\"wide\",\"count\":9,\"median_us\":700000}],\"at\":0}\n"
                    + "{\"sequences\":[\"R U R' U R U2 R'\",\"F2\"],\"at\":1}\n{\"turn\":\"D\",\"at\":2}\n",
            "{\"id\":\"p1\",\"hands\":\"one\",\"method\":\"CFOP\",\"scramble\":\"R U\",\"lines\":[{\"moves\":\"x y\","
                    + "\"stage\":\"inspection\"},{\"moves\":\"r' (U2)3 M\",\"stage\":\"cross\",\"sub\":\"a\"}],"
                    + "\"time_s\":10.69,\"group\":\"g1\",\"source\":\"here\",\"note\":\"as executed\"}\n",
            "{\"hands\":\"two\",\"method\":\"CFOP\",\"scramble\":\"R U\",\"lines\":[{\"moves\":\"U' R'\","
                    + "\"stage\":\"pair\"}]}\n");
    private static final List<String> WORDS = List.of(
            "null",
            "true",
            "[]",
            "{}",
            "\"\"",
            "\"at\":21e3086166919",
            "\"at\":-1",
            "\"at\":1.0",
            "\"at\":1e3",
            "\"turn\":\"R\"",
            "\"gap\":1.5",
            "\"gap\":1e999999999",
            "\"gap\":2147483648",
            "\"mark\":\"scramble\"",
            "\"text\":\"\"",
            "\"text\":\"(((R)999)999)999\"",
            "\"moves\":\"((R U)99 F)99\"",
            "\"verdict\":\"dnf\"",
            "\"first_turn\":9223372036854775807",
            "\"orientation\":[1e999,0,0,0]",
            "\"orientation\":[0.0,0,0,0]",
            "\"calibration\":{}",
            "\"sequences\":[]",
            "\"calibration\"",
            "\"sequences\"",
            "\"hand\":\"\"",
            "\"hand\":\"x\"",
            "\"started_at\":\"+1000000000-12-31T23:59:59Z\"",
            "\"started_at\":\"2106-02-07T06:28:16Z\"",
            "\"zone\":\"UTC+99\"",
            "\"zone\":\"../etc\"",
            "\"version\":1.0",
            "\"clock\":\"arrival\"",
            "\n",
            ",",
            ":",
            "\\u0000",
            "\\ud800",
            "\u001b[2J",
            "\u202e",
            "[[[[[[[[[[[[[[[[",
            "{\"a\":{\"a\":{\"a\":",
            "\ufeff");
    private static final Mutations STREAMS = new Mutations(Mutations.texts(FILES), WORDS);

    private static int read(byte[] input, SplittableRandom random) {
        try {
            for (TurnStream stream : PracticeFile.read("file", input)) {
                check(stream);
            }
        } catch (BadLineException documented) {
            check(documented);
        }
        try {
            WrittenSolve.read("file", input);
        } catch (BadLineException documented) {
            check(documented);
        }
        return 1;
    }

    private static void check(TurnStream stream) {
        String out = String.join("\n", stream.lines()) + "\n";
        if (out.codePoints().anyMatch(point -> point != '\n' && Visible.isInvisible(point))) {
            throw new AssertionError("an export that a terminal would obey: " + Json.write(out));
        }
        List<TurnStream> again = PracticeFile.read("again", out.getBytes(StandardCharsets.UTF_8));
        List<String> lines = new ArrayList<>();
        again.forEach(one -> lines.addAll(one.lines()));
        if (!lines.equals(stream.lines())) {
            throw new AssertionError("exported " + stream.lines() + ", read again " + lines);
        }
        if (stream.events().size() <= MOST_ANALYSED) {
            PracticeAnalysis.solves(new CaptureLog("file", stream.events()));
        }
    }

    private static void check(BadLineException complaint) {
        String message = complaint.getMessage();
        if (!message.startsWith("file, line ") || message.codePoints().anyMatch(Visible::isInvisible)) {
            throw new AssertionError("no complaint of one visible line: " + message);
        }
    }

    /** The whole way: a home that has taken what could be taken, and is still read. */
    private static void bringIn(Path home, int files, long seed) {
        CommandRig rig = new CommandRig(home);
        for (int file = 0; file < files; file++) {
            SplittableRandom random = new SplittableRandom(seed + file);
            String text = new String(STREAMS.next(random), StandardCharsets.ISO_8859_1);
            CommandRig.Outcome outcome = rig.runPiped(text, "import", "-");
            assertThat(outcome.code())
                    .as("seed %d: %s", seed + file, outcome.err())
                    .isIn(0, 2);
        }
        for (String command : List.of("solves", "export", "cases")) {
            CommandRig.Outcome outcome = rig.run(command);
            assertThat(outcome.code()).as("%s: %s", command, outcome.err()).isIn(0, 2);
        }
    }

    @Test
    void shouldGoOnReadingTheHomeWhenSpoiledFilesWereBroughtIn(@TempDir Path home) {
        bringIn(home, 60, 1);
    }

    @Test
    @Tag("fuzz")
    void shouldGoOnReadingTheHomeHoweverManySpoiledFilesWereBroughtIn(@TempDir Path home) {
        bringIn(home, (int) (Fuzzing.LONG_RUN / 5_000), Fuzzing.SEED);
    }

    @Test
    void shouldNameTheLineWhenAFileOfPracticeIsSpoiled() {
        Fuzzing.shortly("imports", 4_000, STREAMS, MOST_BYTES, ImportFuzzTest::read);
    }

    @Test
    @Tag("fuzz")
    void shouldNameTheLineHoweverLongFilesOfPracticeAreSpoiled() {
        Fuzzing.at("imports", 3, STREAMS, MOST_BYTES, ImportFuzzTest::read);
    }
}
