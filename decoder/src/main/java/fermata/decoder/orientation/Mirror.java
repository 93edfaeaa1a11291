package fermata.decoder.orientation;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Left and right exchanged: what a right hand does is what a left hand does in the mirror. Everything here is its own
 * inverse. Stateless.
 */
public final class Mirror {
    private static final int FACE_PLACES = 9;

    private Mirror() {}

    /** L for R and R for L; the other faces lie across the mirror and stay. */
    public static Face of(Face face) {
        return face == Face.L || face == Face.R ? face.opposite() : face;
    }

    /** The turn of the mirrored face, the other way about. */
    public static Turn of(Turn turn) {
        return Turn.of(of(turn.face()), -turn.quarters());
    }

    /** Turn by turn. */
    public static List<Turn> of(List<Turn> turns) {
        return turns.stream().map(Mirror::of).toList();
    }

    /** The hold that shows the mirrored centres up and in front. */
    public static Orientation of(Orientation hold) {
        return Orientation.of(of(hold.coreAt(Face.U)), of(hold.coreAt(Face.F)));
    }

    /** One of the 54 places, numbered as in {@link CubeState#facelets()}: the place across the middle. */
    public static int ofPlace(int place) {
        Face face = of(Face.values()[place / FACE_PLACES]);
        return FACE_PLACES * face.ordinal() + place % FACE_PLACES / 3 * 3 + 2 - place % 3;
    }

    /** Twists change their sense; flips do not, as the reference stickers lie on faces the mirror keeps. */
    public static CubeState of(CubeState state) {
        int[] corners = new int[8];
        int[] twists = new int[8];
        for (Corner place : Corner.values()) {
            int there = of(place).ordinal();
            corners[there] = of(state.cornerAt(place)).ordinal();
            twists[there] = (3 - state.twistAt(place)) % 3;
        }
        int[] edges = new int[12];
        int[] flips = new int[12];
        for (Edge place : Edge.values()) {
            int there = of(place).ordinal();
            edges[there] = of(state.edgeAt(place)).ordinal();
            flips[there] = state.flipAt(place);
        }
        return CubeState.ofCubies(corners, twists, edges, flips);
    }

    private static Corner of(Corner corner) {
        Set<Face> faces = mirrored(corner.faces());
        for (Corner other : Corner.values()) {
            if (faces.equals(Set.copyOf(other.faces()))) {
                return other;
            }
        }
        throw new IllegalStateException("no corner touches " + faces);
    }

    private static Edge of(Edge edge) {
        Set<Face> faces = mirrored(edge.faces());
        for (Edge other : Edge.values()) {
            if (faces.equals(Set.copyOf(other.faces()))) {
                return other;
            }
        }
        throw new IllegalStateException("no edge touches " + faces);
    }

    private static Set<Face> mirrored(List<Face> faces) {
        return faces.stream().map(Mirror::of).collect(Collectors.toSet());
    }
}
