package fermata.analysis.hold;

import java.util.List;
import java.util.Objects;

/**
 * What the hand did, as inferred.
 *
 * @param turns one for each core-frame turn
 * @param rotations between turns, those before the first turn left out; wide turns and slices are not among them
 * @param track the same reading with wide turns and slices folded into layers and changes of hold
 * @param odds for every turn where its layer was seen
 * @param rotated for every turn how likely the cube was turned as a whole since the turn before, over all readings;
 *     wide turns and slices are turns
 * @param logScore natural logarithm of the weight of all readings together, for comparing models on one stream
 */
public record HoldReading(
        List<HandTurn> turns,
        List<InferredRotation> rotations,
        HoldTrack track,
        LayerOdds odds,
        List<Double> rotated,
        double logScore) {
    public HoldReading {
        turns = List.copyOf(turns);
        rotations = List.copyOf(rotations);
        rotated = List.copyOf(rotated);
        Objects.requireNonNull(track, "track");
        Objects.requireNonNull(odds, "odds");
        if (turns.size() != track.size() || odds.size() != track.size() || rotated.size() != track.size()) {
            throw new IllegalArgumentException(turns.size() + " hand turns, " + odds.size() + " odds, " + rotated.size()
                    + " chances of a rotation and a track of " + track.size());
        }
    }
}
