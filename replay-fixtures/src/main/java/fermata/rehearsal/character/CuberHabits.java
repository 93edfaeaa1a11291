package fermata.rehearsal.character;

import fermata.decoder.cube.Face;
import java.util.List;
import java.util.Objects;

/**
 * What a virtual cuber knows and does.
 *
 * @param crossFaces the faces, by their centres, on which the cross may be built; the shortest way wins
 * @param pairsNoticed how many of the open pairs are looked at before one is chosen, 1..4
 * @param twoLooks whether orientation and permutation of the last layer each take two looks
 * @param halfTurnsWhole whether a half turn is reported as one turn; most sensors report two quarter turns
 * @param slipProbability how likely a turn is followed by a wrong one that is taken back
 * @param handling how the hand goes about it
 */
public record CuberHabits(
        List<Face> crossFaces,
        int pairsNoticed,
        boolean twoLooks,
        boolean halfTurnsWhole,
        double slipProbability,
        Handling handling) {
    public CuberHabits {
        crossFaces = List.copyOf(crossFaces);
        if (crossFaces.isEmpty()) {
            throw new IllegalArgumentException("crossFaces names no face; name at least one");
        }
        if (pairsNoticed < 1 || pairsNoticed > 4) {
            throw new IllegalArgumentException("pairsNoticed " + pairsNoticed + " is not in 1..4");
        }
        Ranges.requireShare("slipProbability", slipProbability);
        Objects.requireNonNull(handling, "handling");
    }

    /** The same habits with half turns reported as one turn, or as two quarter turns. */
    public CuberHabits withHalfTurnsWhole(boolean whole) {
        return new CuberHabits(crossFaces, pairsNoticed, twoLooks, whole, slipProbability, handling);
    }
}
