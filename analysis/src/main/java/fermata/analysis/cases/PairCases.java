package fermata.analysis.cases;

import fermata.analysis.goal.HeldState;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.search.Slot;
import java.util.List;

/**
 * The case of a pair: where its two pieces are and how they lie, seen with the pair's own place at FR and the cross
 * at D, up to a turn of U and whatever the pair's colours are.
 *
 * <p>A name says what is seen, as {@code corner-edge}: the corner's place with the face that shows the cross's colour
 * first, then the other two clockwise; the edge's place with the face that shows the front colour first. A corner in
 * U is brought over its place first (URF), else an edge in U to UF. There are 168 names: 41 for pieces in U or in
 * their own place, 126 with a piece in the place of another pair, and {@link LastLayerCases#SKIP}.
 */
public final class PairCases {
    private static final Orientation QUARTER = Orientation.turning(Face.U, 1);

    private PairCases() {}

    /** The case of the pair that belongs in {@code slot}; {@link LastLayerCases#SKIP} if it is there. */
    public static String of(CubeState state, Slot slot) {
        if (slot.isSolved(state)) {
            return LastLayerCases.SKIP;
        }
        CubeState seen = HeldState.renamed(state, bringingToFront(slot));
        for (int quarters = 1; quarters <= 3 && !isLevelled(seen); quarters++) {
            seen = seen.apply(Turn.of(Face.U, 1));
        }
        return name(seen);
    }

    private static Orientation bringingToFront(Slot slot) {
        Orientation hold = Orientation.IDENTITY;
        List<Face> wanted = slot.faces();
        while (!wanted.contains(hold.coreAt(Face.F)) || !wanted.contains(hold.coreAt(Face.R))) {
            hold = hold.then(QUARTER);
        }
        return hold;
    }

    private static boolean isLevelled(CubeState state) {
        Corner corner = state.placeOf(Corner.DFR);
        Edge edge = state.placeOf(Edge.FR);
        return corner.touches(Face.U) ? corner == Corner.URF : !edge.touches(Face.U) || edge == Edge.UF;
    }

    private static String name(CubeState state) {
        Corner corner = state.placeOf(Corner.DFR);
        Edge edge = state.placeOf(Edge.FR);
        int twist = state.twistAt(corner);
        StringBuilder name = new StringBuilder();
        for (int which = 0; which < 3; which++) {
            name.append(corner.faces().get((which + twist) % 3));
        }
        int flip = state.flipAt(edge);
        return name.append('-')
                .append(edge.faces().get(flip))
                .append(edge.faces().get(1 - flip))
                .toString();
    }
}
