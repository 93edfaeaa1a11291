package fermata.decoder.notation;

import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import java.util.Objects;

/**
 * A written sequence as the centres feel it.
 *
 * @param steps the core-frame turns in order; rotations make none, slices two
 * @param end the hold after the last move
 */
public record CoreWalk(List<CoreStep> steps, Orientation end) {
    public CoreWalk {
        steps = List.copyOf(steps);
        Objects.requireNonNull(end, "end");
    }

    /** The turns alone. */
    public List<Turn> turns() {
        return steps.stream().map(CoreStep::turn).toList();
    }
}
