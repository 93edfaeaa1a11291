package fermata.analysis.goal;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.search.Slot;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What holds in a state, on a cube held so that its first layer is D and, where edges are oriented, F and B are bad.
 */
public final class Pieces {
    public static final List<Edge> CROSS = List.of(Edge.DF, Edge.DR, Edge.DB, Edge.DL);
    public static final List<Corner> TOP_CORNERS = List.of(Corner.URF, Corner.UFL, Corner.ULB, Corner.UBR);
    public static final List<Edge> TOP_EDGES = List.of(Edge.UF, Edge.UL, Edge.UB, Edge.UR);
    public static final PieceSet LINE = PieceSet.of(List.of(), List.of(Edge.DF, Edge.DB));
    /** The 1x2x3 block at L and D. */
    public static final PieceSet LEFT_BLOCK =
            PieceSet.of(List.of(Corner.DLF, Corner.DBL), List.of(Edge.DL, Edge.FL, Edge.BL));
    /** The one at R and D. */
    public static final PieceSet RIGHT_BLOCK =
            PieceSet.of(List.of(Corner.DFR, Corner.DRB), List.of(Edge.DR, Edge.FR, Edge.BR));

    private static final PieceSet CROSS_PIECES = PieceSet.of(List.of(), CROSS);
    private static final PieceSet TOP_CORNER_PIECES = PieceSet.of(TOP_CORNERS, List.of());
    private static final PieceSet TOP_EDGE_PIECES = PieceSet.of(List.of(), TOP_EDGES);
    private static final PieceSet ALL = PieceSet.of(List.of(Corner.values()), List.of(Edge.values()));

    private static final Map<Slot, PieceSet> PAIRS = new EnumMap<>(Slot.class);

    static {
        for (Slot slot : Slot.values()) {
            PAIRS.put(slot, PieceSet.of(List.of(slot.corner()), List.of(slot.edge())));
        }
    }

    private Pieces() {}

    /** The pair that belongs in a slot. */
    public static PieceSet of(Slot slot) {
        return PAIRS.get(slot);
    }

    public static boolean cross(HeldState state) {
        return state.has(CROSS_PIECES);
    }

    /** Whether the cross is right among its own edges, whatever D turn it lacks. */
    public static boolean crossUpToTurn(HeldState state) {
        return state.hasUpToTurn(Face.D, CROSS_PIECES);
    }

    /** The solved slots as a bit set, by ordinal. */
    public static int pairs(HeldState state) {
        int solved = 0;
        for (Slot slot : Slot.values()) {
            if (state.has(of(slot))) {
                solved |= 1 << slot.ordinal();
            }
        }
        return solved;
    }

    public static boolean firstTwoLayers(HeldState state) {
        return cross(state) && pairs(state) == 15;
    }

    /** Whether only the order of the last layer's pieces is wrong. */
    public static boolean topOriented(HeldState state) {
        return topEdgesOriented(state) && topCornersOriented(state);
    }

    /** Over the first two layers. */
    public static boolean topEdgesOriented(HeldState state) {
        return firstTwoLayers(state)
                && TOP_EDGES.stream().allMatch(place -> state.renamed().flipAt(place) == 0);
    }

    /** Over the first two layers. */
    public static boolean topCornersOriented(HeldState state) {
        return firstTwoLayers(state)
                && TOP_CORNERS.stream().allMatch(place -> state.renamed().twistAt(place) == 0);
    }

    public static boolean topCornersInOrder(HeldState state) {
        return state.hasUpToTurn(Face.U, TOP_CORNER_PIECES);
    }

    public static boolean topEdgesInOrder(HeldState state) {
        return state.hasUpToTurn(Face.U, TOP_EDGE_PIECES);
    }

    public static boolean solvedUpToTop(HeldState state) {
        return state.hasUpToTurn(Face.U, ALL);
    }

    /** Whether no edge needs a quarter turn of F or B. */
    public static boolean edgesOriented(HeldState state) {
        CubeState seen = state.renamed();
        for (Edge place : Edge.values()) {
            if (seen.flipAt(place) != 0) {
                return false;
            }
        }
        return true;
    }
}
