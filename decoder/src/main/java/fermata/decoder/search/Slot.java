package fermata.decoder.search;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Orientation;
import java.util.Arrays;
import java.util.List;

/** The four places of a corner-edge pair, on a cube whose cross is at D. */
public enum Slot {
    FR(Corner.DFR, Edge.FR, Edge.DF, Edge.DR),
    FL(Corner.DLF, Edge.FL, Edge.DF, Edge.DL),
    BL(Corner.DBL, Edge.BL, Edge.DB, Edge.DL),
    BR(Corner.DRB, Edge.BR, Edge.DB, Edge.DR);

    /** The cross edges, in the order in which planners keep their codes. */
    public static final List<Edge> CROSS = List.of(Edge.DR, Edge.DF, Edge.DL, Edge.DB);

    private final Corner corner;
    private final Edge edge;
    private final List<Edge> crossEdges;

    Slot(Corner corner, Edge edge, Edge one, Edge other) {
        this.corner = corner;
        this.edge = edge;
        this.crossEdges = List.of(one, other);
    }

    /** The corner of the pair that belongs here. */
    public Corner corner() {
        return corner;
    }

    /** The edge of the pair that belongs here. */
    public Edge edge() {
        return edge;
    }

    /** The two cross edges on either side of it. */
    public List<Edge> crossEdges() {
        return crossEdges;
    }

    /** Whether its pair is in it, the right way round. */
    public boolean isSolved(CubeState state) {
        return state.isSolved(corner) && state.isSolved(edge);
    }

    /** The two side faces, F or B first. */
    public List<Face> faces() {
        return edge.faces();
    }

    /** The edge of this place by its centres, when the four places are seen from {@code hold}. */
    public Edge edgeIn(Orientation hold) {
        List<Face> centres = edge.faces().stream().map(hold::coreAt).toList();
        return Arrays.stream(Edge.values())
                .filter(candidate -> candidate.faces().containsAll(centres))
                .findFirst()
                .orElseThrow();
    }
}
