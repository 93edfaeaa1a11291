package fermata.rehearsal.planning;

import fermata.decoder.orientation.Orientation;
import java.util.List;

/**
 * A whole solve as meant.
 *
 * @param start the hold it is begun in
 * @param stages cross, four pairs, orient, permute, auf, in this order
 */
public record PlannedSolve(Orientation start, List<PlannedStage> stages) {
    public PlannedSolve {
        stages = List.copyOf(stages);
    }
}
