package fermata.analysis.hand;

import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;
import java.util.Objects;

/**
 * A heard turn as the hand made it.
 *
 * @param move what the hand did; a slice stands on each of its turns
 * @param hold the hold before the move
 * @param probability that the hold was so, 0..1; 1 if the solver said it
 */
public record MadeTurn(Move move, Orientation hold, double probability) {
    public MadeTurn {
        Objects.requireNonNull(move, "move");
        Objects.requireNonNull(hold, "hold");
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("probability " + probability + " of a hold is not in 0..1");
        }
    }
}
