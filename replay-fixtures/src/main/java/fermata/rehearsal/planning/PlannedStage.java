package fermata.rehearsal.planning;

import fermata.decoder.notation.Move;
import java.util.List;

/**
 * A stage as the solver means to turn it.
 *
 * @param name {@code cross, pair1..pair4, orient, permute} or {@code auf}
 * @param caseName the customary case number or letter, the slot of a pair, or empty
 * @param looks the moves, cut where the solver has to look again; no looks if the stage was done already
 */
public record PlannedStage(String name, String caseName, List<List<Move>> looks) {
    public PlannedStage {
        looks = List.copyOf(looks);
    }

    static PlannedStage done(String name) {
        return new PlannedStage(name, "", List.of());
    }
}
