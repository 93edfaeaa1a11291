package fermata.analysis.rehearsal;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Orientation;
import java.util.Arrays;
import java.util.List;

/** The four places of a corner and its middle-layer edge, with the cross edges on either side. */
enum Slot {
    FR(Corner.DFR, Edge.FR, Edge.DF, Edge.DR),
    FL(Corner.DLF, Edge.FL, Edge.DF, Edge.DL),
    BL(Corner.DBL, Edge.BL, Edge.DB, Edge.DL),
    BR(Corner.DRB, Edge.BR, Edge.DB, Edge.DR);

    /** The cross edges in the order the planners keep their codes. */
    static final List<Edge> CROSS = List.of(Edge.DR, Edge.DF, Edge.DL, Edge.DB);

    final Corner corner;
    final Edge edge;
    final List<Edge> besides;

    Slot(Corner corner, Edge edge, Edge one, Edge other) {
        this.corner = corner;
        this.edge = edge;
        this.besides = List.of(one, other);
    }

    /** The edge of this place by its centres, when the four places are seen from {@code hold}. */
    Edge in(Orientation hold) {
        List<Face> centres = edge.faces().stream().map(hold::coreAt).toList();
        return Arrays.stream(Edge.values())
                .filter(candidate -> candidate.faces().containsAll(centres))
                .findFirst()
                .orElseThrow();
    }
}
