package fermata.rehearsal.character;

import java.util.Objects;
import java.util.Set;

/**
 * How a virtual cuber's hand goes about what is not plain U and R. Common practice among one-handed solvers, no source.
 *
 * @param left what is done about the held side in the pairs
 * @param tiltsEarly whether the turns of the upper side that lead up to a tilt are made in the tilt already
 * @param widensCross whether a turn of the held side in the cross is a wide turn of the free one, else as in the pairs
 * @param wideShare how often U y' (and U' y) is made as one wide turn d (d')
 * @param ownCases the last-layer cases, by number or letter, for which this character knows a sequence of its own
 */
public record Handling(LeftSide left, boolean tiltsEarly, boolean widensCross, double wideShare, Set<String> ownCases) {
    public Handling {
        Objects.requireNonNull(left, "left");
        Ranges.requireShare("wideShare", wideShare);
        ownCases = Set.copyOf(ownCases);
        LastLayerSequences.requireCases(ownCases);
    }

    /** Tilts, widens in the cross, knows what all know. */
    public static Handling usual() {
        return new Handling(LeftSide.TILTED, false, true, 0.5, Set.of());
    }
}
