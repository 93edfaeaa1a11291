package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.decoder.stream.OpenLayout;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProfileCheckTest {
    @TempDir
    Path directory;

    @Test
    void shouldSayWhatAUsableProfileMeans() throws IOException {
        Path file = Files.writeString(directory.resolve("open.json"), OpenLayout.profileText());

        Outcome outcome = CommandRig.runPlain("", "profile", "check", file.toString());

        assertThat(outcome.code()).isZero();
        assertThat(outcome.out()).contains("is usable").contains(OpenLayout.SERVICE.toString());
    }

    @Test
    void shouldNamePathValueAndExpectationOfEverythingThatIsWrong() throws IOException {
        Path file = Files.writeString(
                directory.resolve("bad.json"),
                OpenLayout.profileText().replace("\"tickMicros\": 1000", "\"tickMicros\": \"slow\""));

        Outcome outcome = CommandRig.runPlain("", "profile", "check", file.toString());
        Outcome json = CommandRig.runPlain("", "profile", "check", "--json", file.toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains("bad.json: $.").contains("\"slow\"").contains("expected");
        assertThat(json.code()).isEqualTo(2);
        assertThat(json.json().get("problems").size())
                .isEqualTo((int) outcome.err().lines().count());
    }

    @Test
    void shouldPrintTheShapeThatTheDocumentPromises() throws IOException {
        Path good = Files.writeString(directory.resolve("open.json"), OpenLayout.profileText());
        Path bad = Files.writeString(directory.resolve("bad.json"), "{}");
        Set<String> found = new TreeSet<>();
        for (Path file : Set.of(good, bad)) {
            found.addAll(DocumentedShapes.found(CommandRig.runPlain("", "profile", "check", "--json", file.toString())
                    .json()));
        }

        assertThat(found).isEqualTo(DocumentedShapes.promised("profile check"));
    }
}
