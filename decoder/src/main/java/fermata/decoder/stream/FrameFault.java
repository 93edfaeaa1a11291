package fermata.decoder.stream;

import java.util.Objects;

/**
 * Why a frame could not be read.
 *
 * @param kind the class of fault, for counting
 * @param field the member of the profile that failed, such as {@code turns.constants[0]}
 * @param offset first byte of that field in the frame
 * @param value what was found
 * @param expected what would have been right
 */
public record FrameFault(Kind kind, String field, int offset, String value, String expected) {
    /** Classes of fault. */
    public enum Kind {
        TRUNCATED,
        TOO_LONG,
        WRONG_CONSTANT,
        WRONG_CHECKSUM,
        UNKNOWN_TURN,
        UNKNOWN_STATE,
        OUT_OF_RANGE
    }

    public FrameFault {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(field, "field");
        Objects.requireNonNull(value, "value");
        Objects.requireNonNull(expected, "expected");
    }

    /** One sentence for people. */
    public String message() {
        return field + " at byte " + offset + " is " + value + ", expected " + expected;
    }
}
