package fermata.daemon.web;

import fermata.daemon.json.Json;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.databind.node.ObjectNode;

/**
 * A page as one file that asks for nothing: the same page as the server's with its looks, its script and the documents
 * that it would have asked for put inside. It works from a disk with the network off, and its own policy forbids it to
 * ask any machine for anything.
 *
 * <p>It holds what its documents hold and nothing else: documents as the command line prints them with {@code --json}
 * have neither a device's address nor notes. Stateless and thread-safe; a score is about 150 KB.
 */
public final class OneFile {
    /** Nothing may be fetched; what stands in the file may run. */
    private static final String POLICY = "default-src 'none'; script-src 'unsafe-inline'; "
            + "style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

    private static final Pattern STYLE =
            Pattern.compile("<link rel=\"stylesheet\" href=\"/site/([a-z]+/[a-z-]+\\.css)\">\n");
    private static final Pattern PRELOAD = Pattern.compile("<link rel=\"modulepreload\" [^>]*>\n");
    private static final Pattern SCRIPT =
            Pattern.compile("<script type=\"module\" src=\"/site/([a-z]+/[a-z-]+\\.mjs)\"></script>");
    private static final Pattern LINK_TO_BOARD = Pattern.compile("<a class=\"(to-[a-z]+)\" href=\"/[^>]*>[^<]*</a>\n?");

    private OneFile() {}

    /**
     * The page of a solve.
     *
     * @param id the solve's id
     * @param solveJson as {@code show ID --json} prints it
     */
    public static String score(String id, String solveJson) {
        return page("score/score.html", "/solves/" + id, Map.of("/api/solves/" + id, solveJson));
    }

    /**
     * A page that draws the score of a solve as plain SVG and nothing else; the text of the picture stands in its
     * element {@code #picture}.
     */
    static String picture(String id, String solveJson) {
        return score(id, solveJson).replace(SiteFiles.script("score/score.mjs"), SiteFiles.script("score/alone.mjs"));
    }

    /**
     * Any page of the server.
     *
     * @param name the page's file, {@code score/score.html} or {@code night/night.html}
     * @param path the address under which the server shows this page, {@code /nights/2026-11-24}
     * @param documents the JSON of every address that the page asks for while it opens, by path with query; what is
     *     asked for beyond them is answered as if the server did not know it
     */
    public static String page(String name, String path, Map<String, String> documents) {
        ObjectNode kept = Json.object();
        kept.put("path", path);
        ObjectNode all = kept.putObject("documents");
        documents.forEach((address, document) -> all.set(address, Json.read(document)));
        // No markup can begin inside a script element's text once its angle brackets are written as escapes.
        String data = Json.write(kept).replace("<", "\\u003c");

        String html = SiteFiles.text(name);
        html = PRELOAD.matcher(html).replaceAll("");
        html = LINK_TO_BOARD.matcher(html).replaceAll("");
        html = html.replace("<a class=\"sign\" href=\"/\">", "<span class=\"sign\">")
                .replace("fermata</a>", "fermata</span>");
        html = html.replace(
                "/site/page/icon.svg", "data:image/svg+xml;base64," + base64(SiteFiles.text("page/icon.svg")));
        html = html.replace(
                "<meta charset=\"utf-8\">",
                "<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"" + POLICY + "\">");
        html = STYLE.matcher(html)
                .replaceAll(
                        link -> Matcher.quoteReplacement("<style>\n" + SiteFiles.text(link.group(1)) + "</style>\n"));
        return SCRIPT.matcher(html)
                .replaceAll(link -> Matcher.quoteReplacement("<script type=\"application/json\" id=\"kept\">" + data
                        + "</script>\n<script type=\"module\">\n" + SiteFiles.script(link.group(1)) + "\n</script>"));
    }

    private static String base64(String text) {
        return Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8));
    }
}
