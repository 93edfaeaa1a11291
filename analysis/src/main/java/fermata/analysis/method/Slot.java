package fermata.analysis.method;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import java.util.List;

/** The four places of a corner-edge pair, on a cube whose cross is at D. */
enum Slot {
    FR(Corner.DFR, Edge.FR),
    FL(Corner.DLF, Edge.FL),
    BL(Corner.DBL, Edge.BL),
    BR(Corner.DRB, Edge.BR);

    final Corner corner;
    final Edge edge;
    final PieceSet pieces;

    Slot(Corner corner, Edge edge) {
        this.corner = corner;
        this.edge = edge;
        this.pieces = PieceSet.of(List.of(corner), List.of(edge));
    }

    boolean isSolved(CubeState state) {
        return state.isSolved(corner) && state.isSolved(edge);
    }

    /** The two side faces, F or B first. */
    List<Face> faces() {
        return edge.faces();
    }
}
