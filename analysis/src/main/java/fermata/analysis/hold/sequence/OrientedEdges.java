package fermata.analysis.hold.sequence;

import fermata.decoder.cube.Axis;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;

/**
 * Which edges can be solved without quarter turns of the two faces on an axis.
 *
 * <p>A quarter turn of those faces changes four edges, any other turn none: so a solver who orients edges first
 * shows it by a state, not by what turns happen to follow.
 */
final class OrientedEdges {
    private OrientedEdges() {}

    /** Whether all twelve can. Cost: twelve look-ups. */
    static boolean all(CubeState state, Axis axis) {
        for (Edge place : Edge.values()) {
            boolean otherKey = keyedBySecond(place, axis) != keyedBySecond(state.edgeAt(place), axis);
            if ((state.flipAt(place) == 1) != otherKey) {
                return false;
            }
        }
        return true;
    }

    /** Whether the sticker that tells an edge's orientation about an axis is the second one of its name. */
    private static boolean keyedBySecond(Edge edge, Axis axis) {
        Axis upright = axis == Axis.values()[0] ? Axis.values()[1] : Axis.values()[0];
        boolean touches = edge.faces().stream().anyMatch(face -> face.axis() == upright);
        return edge.faces().get(0).axis() != (touches ? upright : axis);
    }
}
