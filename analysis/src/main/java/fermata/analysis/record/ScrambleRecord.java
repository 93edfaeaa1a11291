package fermata.analysis.record;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Span;
import fermata.decoder.orientation.Orientation;
import java.util.Objects;

/**
 * The scramble of an attempt.
 *
 * @param announced the announced words as they were announced; empty if none were
 * @param boundary how its end is known
 * @param probability that the end is where it is said to be: 1 if the announced state was reached, below 1 otherwise
 * @param hold how the cube was held while the announced words were done: the words' U is {@code hold.coreAt(U)}; the
 *     identity if {@code boundary} is not {@link Boundary#ANNOUNCED_WORDS}
 * @param span the turns counted to the scramble, raw indexes; empty if it was done before the capture began
 * @param start the state in which the attempt begins, relative to the reference: solved means solved
 */
public record ScrambleRecord(
        String announced, Boundary boundary, double probability, Orientation hold, Span span, CubeState start) {
    public ScrambleRecord {
        Objects.requireNonNull(announced, "announced");
        Objects.requireNonNull(boundary, "boundary");
        Objects.requireNonNull(hold, "hold");
        Objects.requireNonNull(span, "span");
        Objects.requireNonNull(start, "start");
        if (!(probability > 0 && probability <= 1)) {
            throw new IllegalArgumentException("probability " + probability + " of a scramble's end is not in (0, 1]");
        }
    }
}
