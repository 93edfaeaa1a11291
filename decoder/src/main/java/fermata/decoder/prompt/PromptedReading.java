package fermata.decoder.prompt;

import java.util.Objects;

/** What became of reading a recording. */
public sealed interface PromptedReading {
    /** It stands. */
    record Usable(PromptedRecording recording) implements PromptedReading {
        public Usable {
            Objects.requireNonNull(recording, "recording");
        }
    }

    /** It does not: the first thing that is wrong. */
    record Unusable(PromptedProblem problem) implements PromptedReading {
        public Unusable {
            Objects.requireNonNull(problem, "problem");
        }
    }
}
