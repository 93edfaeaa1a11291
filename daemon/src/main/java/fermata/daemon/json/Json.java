package fermata.daemon.json;

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

    /** The document on one line. */
    public static String write(Object document) {
        return MAPPER.writeValueAsString(document);
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
        return MAPPER.readTree(text);
    }

    /** Reads a document that this program wrote. */
    public static <T> T read(String text, Class<T> type) {
        return MAPPER.readValue(text, type);
    }
}
