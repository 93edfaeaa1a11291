package fermata.daemon.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tools.jackson.databind.JsonNode;

/** The members that docs/formats.md promises, and those that a document has. */
final class DocumentedShapes {
    private static final Path FILE = Path.of("..", "docs", "formats.md");
    private static final Pattern MEMBER = Pattern.compile("`([^`]+)`");
    /** Objects whose members are names of things, and lists of the same shape as what holds them. */
    private static final Set<String> OPEN =
            Set.of("face_colours", "solves[].stages_us", "stages[].parts[]", "holds.inferred", "profile");

    private DocumentedShapes() {}

    /** The members named in the first column of the tables under a heading. */
    static Set<String> promised(String heading) throws IOException {
        String text = Files.readString(FILE);
        int begin = text.indexOf("\n### " + heading + "\n");
        int end = text.indexOf("\n### ", begin + 1);
        Set<String> members = new TreeSet<>();
        for (String line : text.substring(begin, end < 0 ? text.length() : end).split("\n")) {
            if (line.startsWith("| `")) {
                Matcher matcher = MEMBER.matcher(line.split("\\|")[1]);
                while (matcher.find()) {
                    members.add(matcher.group(1));
                }
            }
        }
        return members;
    }

    /** The paths of all leaves of a document. */
    static Set<String> found(JsonNode document) {
        Set<String> paths = new TreeSet<>();
        collect("", document, paths);
        return paths;
    }

    private static void collect(String path, JsonNode node, Set<String> paths) {
        if (OPEN.contains(path) || node.isValueNode()) {
            paths.add(path);
        } else if (node.isArray()) {
            if (OPEN.contains(path + "[]")) {
                paths.add(path + "[]");
                return;
            }
            node.forEach(element -> collect(path + "[]", element, paths));
        } else {
            Set<Map.Entry<String, JsonNode>> members = new LinkedHashSet<>(node.properties());
            members.forEach(member ->
                    collect(path.isEmpty() ? member.getKey() : path + "." + member.getKey(), member.getValue(), paths));
        }
    }
}
