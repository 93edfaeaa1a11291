package fermata.analysis.hold;

import fermata.decoder.orientation.Orientation;
import java.util.Objects;

/**
 * A rotation of the whole cube that the stream did not show.
 *
 * @param beforeTurn the core-frame turn it stands before
 * @param rotation about the solver's own axes
 * @param probability that the layers on both sides of it were seen where this reading says, 0..1
 */
public record InferredRotation(int beforeTurn, Orientation rotation, double probability) {
    public InferredRotation {
        Objects.requireNonNull(rotation, "rotation");
        if (rotation == Orientation.IDENTITY) {
            throw new IllegalArgumentException("the rotation before turn " + beforeTurn + " rotates nothing");
        }
        Probability.check(probability, "rotation before turn " + beforeTurn);
    }
}
