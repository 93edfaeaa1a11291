package fermata.analysis.rehearsal;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Facelets;
import fermata.decoder.orientation.Orientation;

/** A state named anew: by where the hand sees its centres, or as a mirror shows it. */
final class SeenState {
    private SeenState() {}

    /** The state whose face letters say where the solver, in {@code hold}, sees each colour's centre. */
    static CubeState in(Orientation hold, CubeState state) {
        StringBuilder letters = new StringBuilder();
        for (char core : hold.facelets(state).toCharArray()) {
            letters.append(hold.handAt(Face.of(core)).name());
        }
        return Facelets.read(letters.toString());
    }

    /** What a mirror between R and L shows: a right hand's cube as a left hand would have it. */
    static CubeState mirrored(CubeState state) {
        String letters = state.facelets();
        StringBuilder mirrored = new StringBuilder();
        for (Face face : Face.values()) {
            for (int place = 0; place < 9; place++) {
                int source = mirrored(face).ordinal() * 9 + place / 3 * 3 + 2 - place % 3;
                mirrored.append(mirrored(Face.of(letters.charAt(source))).name());
            }
        }
        return Facelets.read(mirrored.toString());
    }

    static Face mirrored(Face face) {
        return face == Face.R || face == Face.L ? face.opposite() : face;
    }
}
