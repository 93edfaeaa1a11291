package fermata.analysis.hand;

import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * What is likely of a heard turn over all readings, not the answer's alone: for sums, which must not take the likeliest
 * reading for the only one.
 *
 * @param rotated how likely the cube was turned as a whole since the turn before, 0..1; wide turns and slices are turns
 * @param layers by {@link Face}, how likely its layer was seen there; of a slice both sides are one layer, and which of
 *     them stands here does not matter
 */
public record TurnOdds(double rotated, List<Double> layers) {
    public TurnOdds {
        layers = List.copyOf(layers);
        if (!(rotated >= 0 && rotated <= 1) || layers.size() != Face.values().length) {
            throw new IllegalArgumentException(
                    "odds of a rotation " + rotated + " not in 0..1, or " + layers.size() + " layers where six are");
        }
    }

    /** Of a turn whose layer is not in doubt, with a rotation before it or without. */
    public static TurnOdds certain(Move move, double rotated) {
        List<Double> layers = new ArrayList<>(Collections.nCopies(Face.values().length, 0.0));
        layers.set(seen(move).ordinal(), 1.0);
        return new TurnOdds(rotated, layers);
    }

    /** Where the centres feel it: a wide turn across from its letter. */
    private static Face seen(Move move) {
        return move.fold(
                layer -> layer.turn().face(),
                wide -> wide.face().opposite(),
                slice -> slice.slice().follows(),
                rotation -> {
                    throw new IllegalArgumentException("the rotation " + rotation.written() + " is not a turn");
                });
    }
}
