package fermata.daemon.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tools.jackson.databind.ObjectMapper;

/**
 * Three scores, kept as the plain pictures that {@code show ID --out FILE.svg} writes. A change of the engraving shows
 * here line by line; look at the new picture, and if it is better, keep it.
 */
class GoldenScoreTest {
    private static final int LINES_SHOWN = 12;
    private static final Path DRAWN = Path.of("target", "scores");

    @ParameterizedTest
    @ValueSource(strings = {"everything", "gapped", "blocks"})
    void shouldEngraveAsItDidBefore(String id) throws Exception {
        Map<String, Object> shown = switch (id) {
            case "gapped" -> ScoreSamples.gapped();
            case "blocks" -> ScoreSamples.blocks();
            default -> ScoreSamples.everything();
        };
        String drawn = InstalledBrowser.score(System.getenv("PATH"), id, new ObjectMapper().writeValueAsString(shown))
                .orElseThrow(() -> new AssertionError("no browser to draw scores with: run ./verify"));

        Path file = Files.writeString(Files.createDirectories(DRAWN).resolve(id + ".svg"), drawn);
        List<String> changes = changes(golden(id).split("\n"), drawn.split("\n"));

        if (!changes.isEmpty()) {
            fail("the score \"" + id + "\" is engraved otherwise than before:\n" + String.join("\n", changes)
                    + "\nlook at daemon/" + file
                    + "; if it is better, copy it to src/test/resources/fermata/daemon/web");
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"everything", "gapped", "blocks"})
    void shouldBeAPlainPicture(String id) throws Exception {
        assertThat(golden(id))
                .startsWith("<svg xmlns=\"http://www.w3.org/2000/svg\"")
                .doesNotContain("<script", "<style", " class=", " style=", " data-", "href");
    }

    private static String golden(String id) throws Exception {
        try (InputStream kept = GoldenScoreTest.class.getResourceAsStream(id + ".svg")) {
            return kept == null ? "" : new String(kept.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** What stands where, before and now: between the lines that are the same at the start and at the end. */
    private static List<String> changes(String[] before, String[] now) {
        int same = 0;
        while (same < Math.min(before.length, now.length) && before[same].equals(now[same])) {
            same++;
        }
        int end = 0;
        while (end < Math.min(before.length, now.length) - same
                && before[before.length - 1 - end].equals(now[now.length - 1 - end])) {
            end++;
        }
        List<String> lines = new ArrayList<>();
        add(lines, "- ", before, same, before.length - end);
        add(lines, "+ ", now, same, now.length - end);
        return lines;
    }

    private static void add(List<String> lines, String mark, String[] text, int from, int to) {
        for (int line = from; line < Math.min(to, from + LINES_SHOWN); line++) {
            lines.add("line " + (line + 1) + " " + mark + text[line].strip());
        }
        if (to - from > LINES_SHOWN) {
            lines.add("... " + mark + (to - from - LINES_SHOWN) + " more");
        }
    }
}
