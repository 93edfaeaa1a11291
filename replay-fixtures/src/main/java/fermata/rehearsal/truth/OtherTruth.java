package fermata.rehearsal.truth;

import fermata.decoder.cube.Span;
import java.util.Objects;

/**
 * Turning that was no attempt.
 *
 * @param turns which
 * @param words what was turned, in notation
 */
public record OtherTruth(Span turns, String words) {
    public OtherTruth {
        Objects.requireNonNull(turns, "turns");
        Objects.requireNonNull(words, "words");
    }
}
