package fermata.analysis.hand;

import fermata.analysis.hold.InferredRotation;
import java.util.List;

/**
 * What the hand did in a solve.
 *
 * @param turns one for every heard turn
 * @param rotations of the whole cube between turns, by the turn they come before; those before the first turn are in
 *     its hold
 * @param stated whether the solver said it; else it is inferred
 */
public record HandReading(List<MadeTurn> turns, List<InferredRotation> rotations, boolean stated) {
    public HandReading {
        turns = List.copyOf(turns);
        rotations = List.copyOf(rotations);
        int count = turns.size();
        rotations.forEach(rotation -> {
            if (rotation.beforeTurn() < 1 || rotation.beforeTurn() >= count) {
                throw new IllegalArgumentException(
                        "a rotation before turn " + rotation.beforeTurn() + " of " + count + " is not between turns");
            }
        });
    }
}
