package fermata.decoder.stream.profile;

import java.util.Objects;

/**
 * One thing wrong in a profile.
 *
 * @param path JSON path, such as {@code $.frames.turns.clock.bits}
 * @param value what stands there, as JSON, cut to 80 characters; "nothing" if the member is absent
 * @param expected what should stand there
 */
public record ProfileProblem(String path, String value, String expected) {
    public ProfileProblem {
        Objects.requireNonNull(path, "path");
        Objects.requireNonNull(value, "value");
        Objects.requireNonNull(expected, "expected");
    }

    /** One line for people. */
    public String message() {
        return path + ": found " + value + ", expected " + expected;
    }
}
