package fermata.decoder.stream.profile;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.MissingNode;

/**
 * A place in a JSON text that notes what is wrong instead of throwing: after a note it gives a harmless stand-in, so
 * that one reading finds every problem. Not thread-safe.
 */
final class JsonSpot {
    private static final int SHOWN_CHARS = 80;

    private final JsonNode node;
    private final String path;
    private final List<ProfileProblem> problems;
    private final Set<String> known = new HashSet<>();

    JsonSpot(JsonNode node, String path, List<ProfileProblem> problems) {
        this.node = node;
        this.path = path;
        this.problems = problems;
    }

    /** Notes that something else was expected here. */
    void expected(String what) {
        problems.add(new ProfileProblem(path, shown(), what));
    }

    private String shown() {
        String text = node.isMissingNode() ? "nothing" : node.toString();
        return text.length() <= SHOWN_CHARS ? text : text.substring(0, SHOWN_CHARS - 3) + "...";
    }

    /** A member that must be there. If it is not, that is noted once, here. */
    JsonSpot member(String name, String what) {
        Optional<JsonSpot> found = optional(name);
        if (found.isPresent()) {
            return found.get();
        }
        JsonSpot missing = new JsonSpot(MissingNode.getInstance(), path + "." + name, problems);
        if (isObject()) {
            missing.expected(what);
        }
        return missing;
    }

    Optional<JsonSpot> optional(String name) {
        known.add(name);
        return node.has(name)
                ? Optional.of(new JsonSpot(node.get(name), path + "." + name, problems))
                : Optional.empty();
    }

    boolean isObject() {
        return node.isObject();
    }

    boolean isArray() {
        return node.isArray();
    }

    boolean isMissing() {
        return node.isMissingNode();
    }

    /** Notes every member that nobody asked for. */
    void close() {
        if (!isMissing() && !isObject()) {
            expected("an object");
        }
        for (Map.Entry<String, JsonNode> member : node.properties()) {
            if (!known.contains(member.getKey())) {
                new JsonSpot(member.getValue(), path + "." + member.getKey(), problems)
                        .expected("no such member; known here: " + String.join(", ", new TreeSet<>(known)));
            }
        }
    }

    long integer(long min, long max) {
        boolean fits = node.isIntegralNumber() && node.canConvertToLong();
        if (fits && node.longValue() >= min && node.longValue() <= max) {
            return node.longValue();
        }
        note("a whole number in " + min + ".." + max);
        return min;
    }

    double number(double above, double max) {
        if (node.isNumber() && node.doubleValue() > above && node.doubleValue() <= max) {
            return node.doubleValue();
        }
        note("a number above " + above + " and at most " + max);
        return max;
    }

    String text(String what) {
        if (node.isString() && !node.stringValue().isBlank()) {
            return node.stringValue();
        }
        note(what);
        return "";
    }

    boolean flag() {
        if (node.isBoolean()) {
            return node.booleanValue();
        }
        note("true or false");
        return false;
    }

    /** One of a few words. */
    <T> T choice(Map<String, T> words, T otherwise) {
        T found = node.isString() ? words.get(node.stringValue()) : null;
        if (found == null) {
            note("one of " + quoted(words.keySet()));
            return otherwise;
        }
        return found;
    }

    private static String quoted(Collection<String> words) {
        return words.stream()
                .sorted()
                .map(w -> '"' + w + '"')
                .reduce((a, b) -> a + ", " + b)
                .orElse("");
    }

    List<JsonSpot> items(int minItems) {
        List<JsonSpot> items = new ArrayList<>();
        if (!node.isArray() || node.size() < minItems) {
            note("an array" + (minItems > 0 ? " of at least " + minItems : ""));
        }
        for (int i = 0; node.isArray() && i < node.size(); i++) {
            items.add(new JsonSpot(node.get(i), path + "[" + i + "]", problems));
        }
        return items;
    }

    /** All members of an object whose names are data. */
    Map<String, JsonSpot> entries(String what) {
        Map<String, JsonSpot> entries = new LinkedHashMap<>();
        if (!isObject() || node.isEmpty()) {
            note(what);
        }
        for (Map.Entry<String, JsonNode> member : node.properties()) {
            entries.put(member.getKey(), new JsonSpot(member.getValue(), path + "." + member.getKey(), problems));
        }
        return entries;
    }

    /** A missing member was noted when it was asked for. */
    private void note(String what) {
        if (!isMissing()) {
            expected(what);
        }
    }
}
