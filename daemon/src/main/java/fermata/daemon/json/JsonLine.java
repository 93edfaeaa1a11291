package fermata.daemon.json;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Function;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.DatabindException;
import tools.jackson.databind.JsonNode;

/**
 * One line of a JSON-lines file: an object, and where it stands.
 *
 * @param file the file as the user named it
 * @param number of the line, from 1
 * @param path where the object lies in the line's own, ending in a dot; empty if it is the line's own
 * @param object the object
 */
public record JsonLine(String file, int number, String path, JsonNode object) {
    /** Reads a line. */
    public static JsonLine parse(String file, int number, String text) {
        JsonNode node;
        try {
            node = Json.read(text);
        } catch (NumberFault e) {
            throw new BadLineException(file, number, e.field(), e.value(), "a number that can be read");
        } catch (JacksonException e) {
            // What follows the object is the one thing that Jackson says in terms of its own settings.
            String why = e instanceof DatabindException ? "something follows it" : e.getOriginalMessage();
            throw new BadLineException(file, number, "", text.strip(), "a JSON object on one line (" + why + ")");
        }
        if (!node.isObject()) {
            throw new BadLineException(file, number, "", text.strip(), "a JSON object on one line");
        }
        return new JsonLine(file, number, "", node);
    }

    /** The objects in a member that must be a list of at least one of them. */
    public List<JsonLine> objects(String field) {
        JsonNode list = object.get(field);
        if (list == null || !list.isArray() || list.isEmpty()) {
            throw bad(field, "a list of objects");
        }
        List<JsonLine> objects = new ArrayList<>();
        for (int i = 0; i < list.size(); i++) {
            String name = field + "[" + i + "]";
            if (!list.get(i).isObject()) {
                throw new BadLineException(
                        file, number, path + name, list.get(i).toString(), "an object");
            }
            objects.add(new JsonLine(file, number, path + name + ".", list.get(i)));
        }
        return objects;
    }

    /** Whether the member is there and not null. */
    public boolean has(String field) {
        return object.hasNonNull(field);
    }

    /** Whether the member is there, be it null. */
    public boolean mentions(String field) {
        return object.has(field);
    }

    /** The text of a member that must be there. */
    public String text(String field) {
        return optionalText(field).orElseThrow(() -> bad(field, "a text"));
    }

    /** The text of a member that may be missing. */
    public Optional<String> optionalText(String field) {
        if (!has(field)) {
            return Optional.empty();
        }
        if (!object.get(field).isString()) {
            throw bad(field, "a text");
        }
        return Optional.of(object.get(field).stringValue());
    }

    /**
     * The text of a member, read by a function that throws IllegalArgumentException for what it does not accept.
     *
     * @param expected what the text should be, in words
     */
    public <T> T read(String field, String expected, Function<String, T> reader) {
        String text = optionalText(field).orElseThrow(() -> bad(field, expected));
        try {
            return reader.apply(text);
        } catch (IllegalArgumentException e) {
            throw bad(field, expected + " (" + e.getMessage() + ")");
        }
    }

    /** A whole number that may be missing, at least {@code least}. */
    public OptionalLong optionalWhole(String field, long least) {
        if (!has(field)) {
            return OptionalLong.empty();
        }
        JsonNode node = object.get(field);
        if (!node.isIntegralNumber() || !node.canConvertToLong() || node.longValue() < least) {
            throw bad(field, "a whole number from " + least);
        }
        return OptionalLong.of(node.longValue());
    }

    /** One of these words. */
    public String oneOf(String field, List<String> words) {
        String expected = "one of " + String.join(", ", words);
        String word = optionalText(field).orElseThrow(() -> bad(field, expected));
        if (!words.contains(word)) {
            throw bad(field, expected);
        }
        return word;
    }

    /** The complaint about a member. */
    public BadLineException bad(String field, String expected) {
        JsonNode node = object.get(field);
        return new BadLineException(file, number, path + field, node == null ? "missing" : node.toString(), expected);
    }

    /** The complaint about the line as a whole. */
    public BadLineException bad(String expected) {
        return new BadLineException(file, number, path, object.toString(), expected);
    }
}
