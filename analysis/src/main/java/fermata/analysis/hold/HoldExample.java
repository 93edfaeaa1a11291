package fermata.analysis.hold;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.CubeState;
import java.util.Objects;

/**
 * A solve of which the holds are known, to learn from or to be held against.
 *
 * @param start the state before the first turn, seen against the centres
 * @param track turns and true holds
 * @param hand which hand made it
 * @param group examples of one group (one scramble, say) must not be split between learning and assessing
 */
public record HoldExample(CubeState start, HoldTrack track, Hand hand, String group) {
    public HoldExample {
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(track, "track");
        Objects.requireNonNull(hand, "hand");
        Objects.requireNonNull(group, "group");
        if (track.size() == 0) {
            throw new IllegalArgumentException("an example of group " + group + " has no turn");
        }
    }
}
