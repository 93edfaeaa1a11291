package fermata.analysis.hand;

import fermata.analysis.hold.InferredRotation;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What the hand did in a solve.
 *
 * @param turns one for every heard turn
 * @param rotations of the whole cube between turns, by the turn they come before; those before the first turn are in
 *     its hold
 * @param stated whether the solver said it; else it is inferred
 * @param odds by heard turn, what is likely over all readings
 */
public record HandReading(List<MadeTurn> turns, List<InferredRotation> rotations, boolean stated, List<TurnOdds> odds) {
    public HandReading {
        turns = List.copyOf(turns);
        rotations = List.copyOf(rotations);
        odds = List.copyOf(odds);
        int count = turns.size();
        if (odds.size() != count) {
            throw new IllegalArgumentException(count + " turns with odds of " + odds.size());
        }
        rotations.forEach(rotation -> {
            if (rotation.beforeTurn() < 1 || rotation.beforeTurn() >= count) {
                throw new IllegalArgumentException(
                        "a rotation before turn " + rotation.beforeTurn() + " of " + count + " is not between turns");
            }
        });
    }

    /** What the solver said, without a doubt. */
    static HandReading said(List<MadeTurn> turns, List<InferredRotation> rotations) {
        Set<Integer> rotated =
                rotations.stream().map(InferredRotation::beforeTurn).collect(Collectors.toSet());
        List<TurnOdds> odds = new ArrayList<>();
        for (MadeTurn turn : turns) {
            odds.add(TurnOdds.certain(turn.move(), rotated.contains(odds.size()) ? 1 : 0));
        }
        return new HandReading(turns, rotations, true, odds);
    }
}
