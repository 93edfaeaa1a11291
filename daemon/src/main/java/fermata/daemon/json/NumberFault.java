package fermata.daemon.json;

import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.exc.StreamReadException;
import tools.jackson.databind.json.JsonMapper;

/** A number in a JSON text that is beyond all numbers; says which. */
final class NumberFault extends StreamReadException {
    private static final long serialVersionUID = 1L;

    private final String field;
    private final String value;

    private NumberFault(String field, String value, NumberFormatException cause) {
        super((JsonParser) null, "the number " + value + " is beyond what can be read", cause);
        this.field = field;
        this.value = value;
    }

    /** Finds the number in a text that could not be read because of one. */
    static NumberFault in(String text, NumberFormatException cause) {
        try (JsonParser parser = JsonMapper.shared().createParser(text)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token == JsonToken.VALUE_NUMBER_FLOAT && !isReadable(parser)) {
                    String path = parser.streamReadContext().pathAsPointer().toString();
                    return new NumberFault(path.isEmpty() ? "" : path.substring(1), parser.getString(), cause);
                }
            }
        }
        throw cause;
    }

    private static boolean isReadable(JsonParser parser) {
        try {
            parser.getDecimalValue();
            return true;
        } catch (NumberFormatException e) {
            return false;
        }
    }

    /** The member it stands in, as a JSON pointer (RFC 6901) without the first slash. */
    String field() {
        return field;
    }

    /** The number as it is written. */
    String value() {
        return value;
    }
}
