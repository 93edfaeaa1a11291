package fermata.daemon.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Joins a page's modules into one, so that a browser asks once instead of following imports from file to file, and so
 * that a page can be a single file. Each module keeps a scope of its own; what it imports stands before it.
 *
 * <p>Modules lie in rooms, {@code room/name.mjs}. Understands what those here are written in: an import on a line of
 * its own, {@code import { a, b } from "./name.mjs";} within a room and {@code from "../room/name.mjs";} out of
 * another, and {@code export} before a function, a class or a constant. Anything else is refused, by name and line.
 * Stateless; linear in the text.
 */
final class JoinedScript {
    private static final Pattern IMPORT =
            Pattern.compile("^import \\{ ([\\w, ]+) } from \"(?:\\.|\\.\\./([a-z]+))/([a-z0-9-]+\\.mjs)\";$");
    private static final Pattern EXPORT = Pattern.compile("^export ((?:async )?function|class|const) (\\w+)");

    private final Function<String, String> source;
    private final Map<String, String> joined = new LinkedHashMap<>();
    private final List<String> underWay = new ArrayList<>();

    private JoinedScript(Function<String, String> source) {
        this.source = source;
    }

    /**
     * The text of a module with all that it imports.
     *
     * @param entry the file that the page loads, {@code room/name.mjs}
     * @param source the text of a file by its name
     * @throws IllegalStateException if a module is written in another way, or imports itself over others
     */
    static String of(String entry, Function<String, String> source) {
        JoinedScript script = new JoinedScript(source);
        script.add(entry);
        return String.join("\n", script.joined.values());
    }

    private void add(String name) {
        if (joined.containsKey(name)) {
            return;
        }
        if (underWay.contains(name)) {
            throw new IllegalStateException(name + " imports itself over " + String.join(", ", underWay)
                    + ": move what both need into a third");
        }
        underWay.add(name);
        List<String> body = new ArrayList<>();
        List<String> exported = new ArrayList<>();
        String[] lines = source.apply(name).strip().split("\n");
        for (int number = 0; number < lines.length; number++) {
            body.add(rewritten(lines[number], exported, name, number + 1));
        }
        underWay.remove(name);
        joined.put(
                name,
                "const " + scope(name) + " = (() => {\n" + String.join("\n", body) + "\nreturn { "
                        + String.join(", ", exported) + " };\n})();");
    }

    private String rewritten(String line, List<String> exported, String name, int number) {
        Matcher imported = IMPORT.matcher(line);
        if (imported.matches()) {
            String room = imported.group(2) == null ? name.substring(0, name.indexOf('/')) : imported.group(2);
            String other = room + "/" + imported.group(3);
            add(other);
            return "const { " + imported.group(1).replace(" as ", ": ") + " } = " + scope(other) + ";";
        }
        Matcher export = EXPORT.matcher(line);
        if (export.find()) {
            exported.add(export.group(2));
            return line.substring("export ".length());
        }
        if (line.startsWith("import ") || line.startsWith("export ")) {
            throw new IllegalStateException(name + ", line " + number + " cannot be joined: \"" + line
                    + "\"; write one line, import { names } from \"./name.mjs\" or \"../room/name.mjs\";"
                    + " or export before a declaration");
        }
        return line;
    }

    private static String scope(String name) {
        return "$" + name.replace(".mjs", "").replace('-', '_').replace('/', '$');
    }
}
