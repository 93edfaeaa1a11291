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
    static final List<String> NAMES = List.of(
            "night.html",
            "score.html",
            "cases.html",
            "now.html",
            "pair.html",
            "missing.html",
            "icon.svg",
            "tokens.css",
            "page.css",
            "night.css",
            "cases.css",
            "score.css",
            "now.css",
            "cube.css",
            "dom.mjs",
            "reader.mjs",
            "words.mjs",
            "night.mjs",
            "night-charts.mjs",
            "night-sentences.mjs",
            "night-stages.mjs",
            "over.mjs",
            "moments.mjs",
            "cases.mjs",
            "case-pictures.mjs",
            "case-words.mjs",
            "cube.mjs",
            "cube-view.mjs",
            "cube-player.mjs",
            "frame.mjs",
            "reading.mjs",
            "gestures.mjs",
            "solve.mjs",
            "score.mjs",
            "score-alone.mjs",
            "score-layout.mjs",
            "score-engraving.mjs",
            "score-labels.mjs",
            "score-marks.mjs",
            "score-notes.mjs",
            "score-signs.mjs",
            "score-words.mjs",
            "score-summary.mjs",
            "score-table.mjs",
            "score-legend.mjs",
            "score-stage.mjs",
            "score-staves.mjs",
            "score-span.mjs",
            "score-glance.mjs",
            "score-setup.mjs",
            "score-keep.mjs",
            "score-svg.mjs",
            "transport.mjs",
            "live.mjs",
            "now.mjs",
            "now-line.mjs",
            "now-words.mjs",
            "choices.mjs",
            "letters.mjs",
            "now-cues.mjs",
            "session.mjs",
            "pair.css",
            "pair.mjs");

    /** What pages load; served joined with what it imports, which is served by itself too, for tests and readers. */
    private static final Set<String> ENTRIES =
            Set.of("night.mjs", "cases.mjs", "score.mjs", "score-alone.mjs", "now.mjs", "pair.mjs");

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

    /** The file with this name, or nothing. */
    Optional<Answer> file(String name) {
        return Optional.ofNullable(answerOfName.get(name));
    }

    private static Answer read(String name) {
        String suffix = name.substring(name.lastIndexOf('.') + 1);
        int status = name.equals("missing.html") ? 404 : 200;
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
