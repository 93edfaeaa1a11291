package fermata.daemon.json;

import fermata.daemon.text.Visible;
import java.util.Locale;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.PropertyNamingStrategies;
import tools.jackson.databind.cfg.JsonNodeFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** Reads and writes JSON: records in snake case, members in their order, nulls written. Stateless and thread-safe. */
public final class Json {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .disable(JsonNodeFeature.STRIP_TRAILING_BIGDECIMAL_ZEROES)
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
            .build();

    private Json() {}

    /** The document on one line. What a terminal would obey or an eye would not see is escaped, and reads the same. */
    public static String write(Object document) {
        return escaped(MAPPER.writeValueAsString(document));
    }

    /** JSON asks for escapes of the characters below a space only; others too can stand in its strings alone. */
    private static String escaped(String json) {
        if (json.codePoints().noneMatch(Visible::isInvisible)) {
            return json;
        }
        StringBuilder escaped = new StringBuilder(json.length() + 64);
        json.codePoints().forEach(point -> {
            if (Visible.isInvisible(point)) {
                for (char half : Character.toChars(point)) {
                    escaped.append(String.format(Locale.ROOT, "\\u%04X", (int) half));
                }
            } else {
                escaped.appendCodePoint(point);
            }
        });
        return escaped.toString();
    }

    /** An empty object, to be filled. */
    public static ObjectNode object() {
        return MAPPER.createObjectNode();
    }

    /** A document as a tree, to be put into another. */
    public static ObjectNode tree(Object document) {
        return MAPPER.valueToTree(document);
    }

    /**
     * Reads a document.
     *
     * @throws tools.jackson.core.JacksonException if the text is not JSON
     */
    public static JsonNode read(String text) {
        try {
            return MAPPER.readTree(text);
        } catch (NumberFormatException e) {
            throw NumberFault.in(text, e);
        }
    }

    /** Reads a document that this program wrote. */
    public static <T> T read(String text, Class<T> type) {
        try {
            return MAPPER.readValue(text, type);
        } catch (NumberFormatException e) {
            throw NumberFault.in(text, e);
        }
    }
}
