package fermata.decoder.prompt;

import java.util.Objects;

/**
 * What is wrong with a recording's text.
 *
 * @param line from 1
 * @param member the member that is wrong, "line" for the whole of it
 * @param value what stands there, cut to 80 characters
 * @param expected what should
 */
public record PromptedProblem(int line, String member, String value, String expected) {
    public PromptedProblem {
        Objects.requireNonNull(member, "member");
        Objects.requireNonNull(value, "value");
        Objects.requireNonNull(expected, "expected");
    }

    /** One line for people. */
    public String message() {
        return "line " + line + ", " + member + ": found " + value + ", expected " + expected;
    }
}
