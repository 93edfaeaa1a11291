package fermata.daemon.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The files of the pages, read once from the jar and kept in memory compressed (well under 200 KB together).
 *
 * <p>Only the names listed here exist, so no path can climb out and nothing can be listed. Immutable and thread-safe.
 */
final class SiteFiles {
    /** By room, from what all pages share up to the pages; a test holds which room may use which. */
    static final List<String> NAMES = List.of(
            "page/tokens.css",
            "page/page.css",
            "page/icon.svg",
            "page/missing.html",
            "page/dom.mjs",
            "page/reader.mjs",
            "page/words.mjs",
            "page/choices.mjs",
            "page/moments.mjs",
            "page/over.mjs",
            "cube/cube.css",
            "cube/cube.mjs",
            "cube/view.mjs",
            "cube/letters.mjs",
            "cube/frame.mjs",
            "cube/gestures.mjs",
            "cube/reading.mjs",
            "cube/solve.mjs",
            "staff/staff.css",
            "staff/marks.mjs",
            "staff/lines.mjs",
            "night/night.html",
            "night/night.css",
            "night/night.mjs",
            "night/charts.mjs",
            "night/sentences.mjs",
            "night/stage-shares.mjs",
            "cases/cases.html",
            "cases/cases.css",
            "cases/cases.mjs",
            "cases/case-words.mjs",
            "cases/pictures.mjs",
            "now/now.html",
            "now/now.css",
            "now/now.mjs",
            "now/now-words.mjs",
            "now/cues.mjs",
            "now/live.mjs",
            "now/session.mjs",
            "now/pair.html",
            "now/pair.css",
            "now/pair.mjs",
            "score/score.html",
            "score/score.css",
            "score/score.mjs",
            "score/alone.mjs",
            "score/layout.mjs",
            "score/engraving.mjs",
            "score/labels.mjs",
            "score/notes.mjs",
            "score/signs.mjs",
            "score/staves.mjs",
            "score/span.mjs",
            "score/transport.mjs",
            "score/cube-place.mjs",
            "score/cube-player.mjs",
            "score/glance.mjs",
            "score/score-words.mjs",
            "score/summary.mjs",
            "score/tables.mjs",
            "score/legend.mjs",
            "score/setup.mjs",
            "score/keep.mjs",
            "score/plain-svg.mjs");

    /** What pages load; served joined with what it imports, which is served by itself too, for tests and readers. */
    private static final Set<String> ENTRIES = Set.of(
            "night/night.mjs", "cases/cases.mjs", "score/score.mjs", "score/alone.mjs", "now/now.mjs", "now/pair.mjs");

    private static final Map<String, String> TYPE_OF_SUFFIX = Map.of(
            "html", Answer.HTML,
            "css", "text/css; charset=utf-8",
            "mjs", "text/javascript; charset=utf-8",
            "svg", "image/svg+xml");

    private final Map<String, Answer> answerOfName = new HashMap<>();

    SiteFiles() {
        for (String name : NAMES) {
            answerOfName.put(name, read(name));
        }
    }

    /** The file with this name, {@code room/name}, or nothing. */
    Optional<Answer> file(String name) {
        return Optional.ofNullable(answerOfName.get(name));
    }

    private static Answer read(String name) {
        String suffix = name.substring(name.lastIndexOf('.') + 1);
        int status = name.equals("page/missing.html") ? 404 : 200;
        String text = ENTRIES.contains(name) ? script(name) : text(name);
        return Answer.of(status, TYPE_OF_SUFFIX.get(suffix), text.getBytes(StandardCharsets.UTF_8));
    }

    /** A page's module with all that it imports, as one. */
    static String script(String entry) {
        return JoinedScript.of(entry, SiteFiles::text);
    }

    /** The text of a file as it is in the jar. */
    static String text(String name) {
        try (InputStream file = SiteFiles.class.getResourceAsStream(name)) {
            if (file == null) {
                throw new IllegalStateException("the jar lacks the page file " + name + ": build it again");
            }
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException unreadable) {
            throw new UncheckedIOException("cannot read the page file " + name + " from the jar", unreadable);
        }
    }
}
