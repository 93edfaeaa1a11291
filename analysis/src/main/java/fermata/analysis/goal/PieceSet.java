package fermata.analysis.goal;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.orientation.Orientation;
import java.util.List;

/**
 * Some pieces, named as in a hold: for each hold, the bits of {@link CubeState#home()} that they are on the cube held
 * by its centres. Immutable; a look-up is a table step.
 */
public final class PieceSet {
    private static final int[] CORNER_AT = new int[54];
    private static final int[] EDGE_AT = new int[54];

    static {
        for (Corner place : Corner.values()) {
            for (int which = 0; which < 3; which++) {
                CORNER_AT[place.sticker(which)] = place.ordinal();
            }
        }
        for (Edge place : Edge.values()) {
            for (int which = 0; which < 2; which++) {
                EDGE_AT[place.sticker(which)] = place.ordinal();
            }
        }
    }

    private final int[] byHold;

    private PieceSet(int[] byHold) {
        this.byHold = byHold;
    }

    /** These pieces, ready to be asked for in all 24 holds. */
    public static PieceSet of(List<Corner> corners, List<Edge> edges) {
        int[] byHold = new int[Orientation.all().size()];
        for (Orientation hold : Orientation.all()) {
            int bits = 0;
            for (Corner corner : corners) {
                bits |= 1 << CORNER_AT[hold.placeSeen(corner.sticker(0))];
            }
            for (Edge edge : edges) {
                bits |= 1 << 8 + EDGE_AT[hold.placeSeen(edge.sticker(0))];
            }
            byHold[hold.index()] = bits;
        }
        return new PieceSet(byHold);
    }

    /** Whether all of them are among those that are home. */
    boolean isWithin(int home, Orientation hold) {
        return (byHold[hold.index()] & ~home) == 0;
    }
}
