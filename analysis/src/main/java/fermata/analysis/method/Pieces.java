package fermata.analysis.method;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.function.Predicate;

/**
 * What holds in a state, on a cube held so that its first layer is D and, where edges are oriented, F and B are bad.
 */
final class Pieces {
    static final List<Edge> CROSS = List.of(Edge.DF, Edge.DR, Edge.DB, Edge.DL);
    static final List<Edge> LINE = List.of(Edge.DF, Edge.DB);
    static final List<Corner> TOP_CORNERS = List.of(Corner.URF, Corner.UFL, Corner.ULB, Corner.UBR);
    static final List<Edge> TOP_EDGES = List.of(Edge.UF, Edge.UL, Edge.UB, Edge.UR);

    private Pieces() {}

    static boolean edges(CubeState state, List<Edge> places) {
        return places.stream().allMatch(state::isSolved);
    }

    static boolean cross(CubeState state) {
        return edges(state, CROSS);
    }

    /** Whether the cross is right among its own edges, whatever D turn it lacks. */
    static boolean crossUpToTurn(CubeState state) {
        return upToTurn(state, Face.D, Pieces::cross);
    }

    /** The solved slots as a bit set, by ordinal. */
    static int pairs(CubeState state) {
        int solved = 0;
        for (Slot slot : Slot.values()) {
            if (slot.isSolved(state)) {
                solved |= 1 << slot.ordinal();
            }
        }
        return solved;
    }

    static boolean firstTwoLayers(CubeState state) {
        return pairs(state) == 15 && cross(state);
    }

    /** Whether only the order of the last layer's pieces is wrong. */
    static boolean topOriented(CubeState state) {
        return topEdgesOriented(state) && topCornersOriented(state) && firstTwoLayers(state);
    }

    static boolean topEdgesOriented(CubeState state) {
        return TOP_EDGES.stream().allMatch(place -> state.flipAt(place) == 0);
    }

    static boolean topCornersOriented(CubeState state) {
        return TOP_CORNERS.stream().allMatch(place -> state.twistAt(place) == 0);
    }

    static boolean topCornersInOrder(CubeState state) {
        return upToTurn(state, Face.U, turned -> TOP_CORNERS.stream().allMatch(turned::isSolved));
    }

    static boolean topEdgesInOrder(CubeState state) {
        return upToTurn(state, Face.U, turned -> edges(turned, TOP_EDGES));
    }

    static boolean solvedUpToTop(CubeState state) {
        return upToTurn(state, Face.U, CubeState::isSolved);
    }

    /** Whether no edge needs a quarter turn of F or B. */
    static boolean edgesOriented(CubeState state) {
        for (Edge place : Edge.values()) {
            if (state.flipAt(place) != 0) {
                return false;
            }
        }
        return true;
    }

    static boolean upToTurn(CubeState state, Face face, Predicate<CubeState> holds) {
        if (holds.test(state)) {
            return true;
        }
        for (int quarters = 1; quarters <= 3; quarters++) {
            if (holds.test(state.apply(Turn.of(face, quarters)))) {
                return true;
            }
        }
        return false;
    }
}
