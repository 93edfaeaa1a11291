package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import javax.crypto.Cipher;
import javax.crypto.spec.SecretKeySpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Recordings of a made-up cube: what is found from them, and what is read by what was found. */
class ProfileFindTest {
    @TempDir
    Path directory;

    private final DrilledCube cube = new DrilledCube(UnaryOperator.identity());

    private Path file(String name, List<String> lines) throws IOException {
        return Files.write(directory.resolve(name), lines);
    }

    private static Outcome run(Object... arguments) {
        return CommandRig.runPlain(
                "", Arrays.stream(arguments).map(Object::toString).toArray(String[]::new));
    }

    /** One block of AES-128 by the JDK, under the key of NIST SP 800-38A, F.1.1. */
    private static byte[] enciphered(byte[] frame) {
        try {
            byte[] key = HexFormat.of().parseHex("2b7e151628aed2a6abf7158809cf4f3c");
            Cipher cipher = Cipher.getInstance("AES/ECB/NoPadding");
            cipher.init(Cipher.ENCRYPT_MODE, new SecretKeySpec(key, "AES"));
            return cipher.doFinal(Arrays.copyOf(frame, 16));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void shouldReadEveryTurnByTheProfileWhenItWasFoundFromTheRecording() throws IOException {
        Path recording = file("drill.jsonl", cube.lines());
        Path profile = directory.resolve("found.json");

        Outcome found = run("profile", "find", recording, "--out", profile);
        Outcome replayed = run("profile", "check", profile, "--recording", recording, "--json");

        assertThat(found.code()).as(found.err()).isZero();
        assertThat(found.out().strip()).isEqualTo(profile.toString());
        assertThat(found.err()).contains("this takes some seconds").contains("The profile is sound");
        assertThat(replayed.code()).as(replayed.err()).isZero();
        assertThat(replayed.json().get("counts").get("turns").asInt()).isEqualTo(cube.turnsMade());
        assertThat(replayed.json().get("counts").get("gaps").asInt()).isZero();
        assertThat(replayed.json().get("frames").get(0).get("asked").asString())
                .isEqualTo(replayed.json()
                        .get("frames")
                        .get(0)
                        .get("turns")
                        .get(0)
                        .get("turn")
                        .asString());
    }

    @Test
    void shouldPrintAProfileThatCanBePipedOnWhenNoFileIsNamed() throws IOException {
        Path recording = file("drill.jsonl", cube.lines());

        Outcome found = run("profile", "find", recording);
        Path profile = Files.writeString(directory.resolve("piped.json"), found.out());

        assertThat(run("profile", "check", profile).code()).isZero();
    }

    @Test
    void shouldNameFrameAndLossWhenARecordingIsBroken() throws IOException {
        List<String> lines = cube.lines();
        Path profile = directory.resolve("found.json");
        run("profile", "find", file("drill.jsonl", lines), "--out", profile);
        List<Integer> values = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).startsWith("{\"value\"")) {
                values.add(i);
            }
        }
        lines = new ArrayList<>(lines);
        int broken = values.get(9);
        lines.set(broken, lines.get(broken).replaceFirst("\"value\":\"..", "\"value\":\"ff"));
        lines.remove((int) values.get(20));

        Outcome text = run("profile", "check", profile, "--recording", file("broken.jsonl", lines));

        assertThat(text.code()).isEqualTo(2);
        assertThat(text.err()).contains("1 of " + (values.size() - 1) + " frames were rejected");
        assertThat(text.lines())
                .filteredOn(line -> line.contains("rejected: "))
                .singleElement()
                .satisfies(line -> {
                    assertThat(line.strip()).startsWith("10 ");
                    // The code has four bits: twelve turns need no more.
                    assertThat(line).contains("turns.code at byte 0 is 15");
                });
        assertThat(text.lines())
                .filteredOn(line -> line.contains("1 turn lost, then"))
                .hasSize(2);
    }

    @Test
    void shouldNameTheCipherWhenFramesAreEnciphered() throws IOException {
        Path recording = file("secret.jsonl", new DrilledCube(ProfileFindTest::enciphered).lines());
        Path profile = directory.resolve("none.json");

        Outcome found = run("profile", "find", recording, "--out", profile);

        assertThat(found.code()).isEqualTo(2);
        assertThat(found.out()).isEmpty();
        assertThat(found.err()).contains("The frames are enciphered").contains("bits in a row");
        assertThat(profile).doesNotExist();
    }

    @Test
    void shouldSayWhatToTurnWhenTheDrillDoesNotEndWithASolve() throws IOException {
        Path profile = directory.resolve("none.json");

        Outcome found = run("profile", "find", file("short.jsonl", withoutSolve()), "--out", profile);

        assertThat(found.code()).isEqualTo(2);
        assertThat(found.err()).contains("  drill: it does not end with a solve. Turn freely and solve the cube");
        assertThat(profile).doesNotExist();
    }

    private List<String> withoutSolve() {
        List<String> lines = cube.lines();
        int free = 0;
        while (!lines.get(free).contains("\"free\"")) {
            free++;
        }
        List<String> kept = new ArrayList<>(lines.subList(0, free));
        kept.add(lines.get(lines.size() - 1));
        return kept;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'{'                                                     | line 2, line: found",
                "'{\"value\":\"0g\",\"at\":0}'                           | line 2, value: found \"0g\"",
                "'{\"prompt\":\"single\",\"turns\":\"Q\",\"at\":0}'      | line 2, turns: found",
                "'{\"format\":\"prompted-recording\",\"version\":1}'     | one recording of one device",
                "'{\"prompt\":\"solved\",\"at\":0}'                      | the recording was cut",
                "'{\"end\":true,\"at\":5}'                               | expected prompts",
            })
    void shouldNameLineMemberAndValueAndWriteNothingWhenARecordingIsBad(String line, String message)
            throws IOException {
        String header = "{\"format\":\"prompted-recording\",\"version\":1,\"device\":\"Galley cube\"}";
        Path recording = file("bad.jsonl", List.of(header, line));
        Path profile = directory.resolve("none.json");

        Outcome found = run("profile", "find", recording, "--out", profile);

        assertThat(found.code()).isEqualTo(2);
        assertThat(found.err().lines()).singleElement().asString().contains("bad.jsonl, line ");
        assertThat(found.err()).contains(message);
        assertThat(profile).doesNotExist();
    }

    @Test
    void shouldKeepTheFileThatIsThereWhenItWouldBeWrittenOver() throws IOException {
        Path profile = Files.writeString(directory.resolve("mine.json"), "by hand");

        Outcome found = run("profile", "find", file("drill.jsonl", cube.lines()), "--out", profile);

        assertThat(found.code()).isEqualTo(2);
        assertThat(found.err()).contains("cannot write " + profile + ": it is there already");
        assertThat(Files.readString(profile)).isEqualTo("by hand");
    }

    @Test
    void shouldSayThatARecordingIsNotText() throws IOException {
        Path recording = Files.write(directory.resolve("drill.jsonl"), "\u00ff".getBytes(StandardCharsets.ISO_8859_1));

        assertThat(run("profile", "find", recording).err()).contains("drill.jsonl: it is not UTF-8 text");
    }

    @Test
    void shouldPrintTheShapesThatTheDocumentPromises() throws IOException {
        List<String> lines = cube.lines();
        Path recording = file("drill.jsonl", lines);
        Path profile = directory.resolve("found.json");
        Set<String> found = new TreeSet<>();
        found.addAll(DocumentedShapes.found(
                run("profile", "find", recording, "--out", profile, "--json").json()));
        found.addAll(DocumentedShapes.found(run("profile", "find", file("short.jsonl", withoutSolve()), "--json")
                .json()));
        found.addAll(DocumentedShapes.found(run(
                        "profile",
                        "find",
                        file("secret.jsonl", new DrilledCube(ProfileFindTest::enciphered).lines()),
                        "--json")
                .json()));
        // This layout leaves nothing unexplained.
        found.add("unexplained[]");
        found.remove("proof");

        assertThat(found).isEqualTo(DocumentedShapes.promised("profile find"));
        assertThat(DocumentedShapes.found(run("profile", "check", profile, "--recording", recording, "--json")
                        .json()))
                .isEqualTo(DocumentedShapes.promised("profile check --recording"));
    }
}
