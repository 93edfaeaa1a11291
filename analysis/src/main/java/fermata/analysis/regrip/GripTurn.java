package fermata.analysis.regrip;

import fermata.decoder.notation.Move;
import java.util.List;
import java.util.Objects;

/**
 * One move of a hand, in the hand frame, with what is not sure about it.
 *
 * @param move as it was read: a layer, a wide turn or a slice
 * @param quarters the senses in which it may have been made, -2..2 without 0: a half turn heard whole has two
 * @param layers by {@link fermata.decoder.cube.Face}, how likely its layer was seen there; adds up to 1. Where it was
 *     not seen where the move says, it counts as a plain layer
 * @param rotated how likely the cube was turned as a whole since the move before, 0..1
 * @param rested whether the hand may have come to rest before it: a stage begins
 * @param evidence natural log-likelihood ratio of the interval before it, with a regrip there against without; 0 where
 *     nothing is known
 */
public record GripTurn(
        Move move, List<Integer> quarters, List<Double> layers, double rotated, boolean rested, double evidence) {
    public GripTurn {
        Objects.requireNonNull(move, "move");
        quarters = List.copyOf(quarters);
        layers = List.copyOf(layers);
        if (move instanceof Move.Rotation) {
            throw new IllegalArgumentException("the rotation " + move.written() + " is not a turn");
        }
        if (quarters.isEmpty() || quarters.stream().anyMatch(sense -> sense == 0 || Math.abs(sense) > 2)) {
            throw new IllegalArgumentException("quarters " + quarters + " are none, or not in -2..2 without 0");
        }
        double sum = layers.stream().mapToDouble(Double::doubleValue).sum();
        if (layers.size() != 6 || Math.abs(sum - 1) > 1e-6 || layers.stream().anyMatch(odds -> !(odds >= 0))) {
            throw new IllegalArgumentException("odds " + layers + " of six layers do not add up to 1");
        }
        if (!(rotated >= 0 && rotated <= 1) || !Double.isFinite(evidence)) {
            throw new IllegalArgumentException(
                    "rotated " + rotated + " is not in 0..1, or evidence " + evidence + " is not finite");
        }
    }
}
