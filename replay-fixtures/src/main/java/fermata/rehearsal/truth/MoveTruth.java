package fermata.rehearsal.truth;

import fermata.decoder.cube.Span;
import java.util.Objects;

/**
 * A move as the hand made it.
 *
 * @param move in notation, in the hand frame
 * @param turns the turns it made: none for a rotation, two for a half turn reported in quarters
 * @param slip whether it was a slip or took one back
 */
public record MoveTruth(String move, Span turns, boolean slip) {
    public MoveTruth {
        Objects.requireNonNull(move, "move");
        Objects.requireNonNull(turns, "turns");
    }

    /** Whether the whole cube was turned; its place is then before turn {@code turns().from()}. */
    public boolean isRotation() {
        return "xyz".indexOf(move.charAt(0)) >= 0;
    }
}
