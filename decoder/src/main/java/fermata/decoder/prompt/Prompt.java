package fermata.decoder.prompt;

import java.util.Objects;

/**
 * A step of the drill when it was shown. It holds until the next one is.
 *
 * @param step what was asked for
 * @param atMicros microseconds since the recording began
 */
public record Prompt(PromptStep step, long atMicros) {
    public Prompt {
        Objects.requireNonNull(step, "step");
        if (atMicros < 0) {
            throw new IllegalArgumentException("atMicros " + atMicros + " is negative");
        }
    }
}
