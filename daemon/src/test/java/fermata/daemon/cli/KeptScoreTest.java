package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A solve kept as a file, and a position set up again. */
class KeptScoreTest {
    @TempDir
    Path directory;

    private CommandRig rig;
    private String id;

    @BeforeEach
    void bringAWrittenSolveIn() throws Exception {
        rig = new CommandRig(directory.resolve("home"));
        Path file = directory.resolve("solves.jsonl");
        try (InputStream in = getClass().getResourceAsStream("/fermata/fixtures/solves/solves.jsonl")) {
            String all = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            Files.writeString(file, all.substring(0, all.indexOf('\n') + 1));
        }
        id = rig.run("import", file.toString(), "--json")
                .json()
                .get("solves")
                .get(0)
                .stringValue();
    }

    @Test
    void shouldWriteAPageThatHoldsTheSolveAndNeverWriteOverAFile() throws Exception {
        Path page = directory.resolve("score.html");

        Outcome outcome = rig.run("show", id, "--out", page.toString());

        assertThat(outcome.code()).isZero();
        assertThat(outcome.err()).contains("no device's address, no notes");
        assertThat(Files.readString(page)).contains("\"id\":\"" + id + "\"").contains("default-src 'none'");
        Outcome again = rig.run("show", id, "--out", page.toString());
        assertThat(again.code()).isEqualTo(2);
        assertThat(again.err()).contains("exists already");
    }

    @ParameterizedTest
    @ValueSource(strings = {"score.png", "score"})
    void shouldSayWhichNamesItUnderstands(String name) {
        Outcome outcome = rig.run("show", id, "--out", directory.resolve(name).toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains(".html").contains(".svg");
    }

    @Test
    void shouldSayWhatToDoWhenNoBrowserCanDrawThePicture() {
        Outcome outcome =
                rig.run("show", id, "--out", directory.resolve("score.svg").toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains("chromium").contains(".html");
    }

    @Test
    void shouldPrintTheScrambleThatLeadsToAPosition() {
        String facelets = rig.run("show", id, "--turn", "5", "--json")
                .json()
                .get("facelets")
                .stringValue();

        Outcome outcome = CommandRig.runPlain("", "scramble", "--to", facelets);

        CubeState reached = CubeState.SOLVED.apply(
                Sequence.parse(outcome.out().strip()).walk(Orientation.IDENTITY).turns());
        assertThat(reached.facelets()).isEqualTo(facelets);
        assertThat(CommandRig.runPlain("", "scramble", "--to", "UUU").code()).isEqualTo(2);
        String twisted = CubeState.ofCubies(
                        new int[] {0, 1, 2, 3, 4, 5, 6, 7},
                        new int[] {1, 0, 0, 0, 0, 0, 0, 0},
                        new int[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11},
                        new int[12])
                .facelets();
        assertThat(CommandRig.runPlain("", "scramble", "--to", twisted).err()).contains("cannot be reached by turning");
    }
}
