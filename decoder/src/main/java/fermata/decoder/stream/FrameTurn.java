package fermata.decoder.stream;

import fermata.decoder.cube.Turn;
import java.util.Objects;
import java.util.OptionalLong;

/**
 * A turn as it stands in one frame.
 *
 * @param turn the turn, core frame
 * @param sequence its number as sent (wraps), where the profile has one
 * @param ticks device ticks as sent (wrap), where the frame tells them; with {@code ticksAreBound} the turn was made at
 *     that tick or earlier
 * @param ticksAreBound the difference to a newer turn was too large for its field
 */
public record FrameTurn(Turn turn, OptionalLong sequence, OptionalLong ticks, boolean ticksAreBound) {
    public FrameTurn {
        Objects.requireNonNull(turn, "turn");
        Objects.requireNonNull(sequence, "sequence");
        Objects.requireNonNull(ticks, "ticks");
    }
}
