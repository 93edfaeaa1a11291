package fermata.decoder.notation;

import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.Objects;

/**
 * One core-frame turn of a written sequence, with where it came from.
 *
 * @param turn what the centres feel
 * @param hold the hold before the move that made it
 * @param move the place of that move in its sequence, from 0
 */
public record CoreStep(Turn turn, Orientation hold, int move) {
    public CoreStep {
        Objects.requireNonNull(turn, "turn");
        Objects.requireNonNull(hold, "hold");
    }
}
