package fermata.analysis.hold;

import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;
import java.util.Objects;

/**
 * One core-frame turn as the hand is thought to have made it.
 *
 * @param coreTurn the turn's index in the stream
 * @param move the hand's move: a layer, a wide turn, or the slice of which this turn is one half
 * @param hold the hold before the move
 * @param probability of the hold: that the solver saw this turn's layer and the next turn's on another axis
 * where this     reading says, 0..1
 */
public record HandTurn(int coreTurn, Move move, Orientation hold, double probability) {
    public HandTurn {
        Objects.requireNonNull(move, "move");
        Objects.requireNonNull(hold, "hold");
        if (move instanceof Move.Rotation) {
            throw new IllegalArgumentException("turn " + coreTurn + " cannot be the rotation " + move.written());
        }
        Probability.check(probability, "hold of turn " + coreTurn);
    }
}
