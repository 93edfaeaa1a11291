package fermata.analysis.hold;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.CubeState;
import java.util.List;
import java.util.Objects;

/**
 * A solve of which the holds are known, to learn from or to be held against.
 *
 * @param start the state before the first turn, seen against the centres
 * @param track turns and true holds
 * @param hand which hand made it
 * @param group examples of one group (one scramble, say) must not be split between learning and assessing
 * @param micros by turn, the time since the turn before it, what stands for the first turn not looked at; empty if
 *     there are no times
 */
public record HoldExample(CubeState start, HoldTrack track, Hand hand, String group, List<Long> micros) {
    public HoldExample {
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(track, "track");
        Objects.requireNonNull(hand, "hand");
        Objects.requireNonNull(group, "group");
        micros = List.copyOf(micros);
        if (track.size() == 0) {
            throw new IllegalArgumentException("an example of group " + group + " has no turn");
        }
        if (!micros.isEmpty() && micros.size() != track.size()) {
            throw new IllegalArgumentException("an example of group " + group + " has " + track.size() + " turns and "
                    + micros.size() + " times between them");
        }
    }

    /** An example without times. */
    public HoldExample(CubeState start, HoldTrack track, Hand hand, String group) {
        this(start, track, hand, group, List.of());
    }

    /** What the times between the turns say. */
    public HoldEvidence evidence() {
        return micros.isEmpty()
                ? HoldEvidence.NONE
                : new IntervalEvidence(
                        micros.stream().mapToLong(Long::longValue).toArray());
    }
}
