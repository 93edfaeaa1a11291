package fermata.rehearsal.character;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Facelets;
import fermata.decoder.orientation.Orientation;

/** A state named anew, by where the hand sees its centres. */
public final class SeenState {
    private SeenState() {}

    /** The state whose face letters say where the solver, in {@code hold}, sees each colour's centre. */
    public static CubeState in(Orientation hold, CubeState state) {
        StringBuilder letters = new StringBuilder();
        for (char core : hold.facelets(state).toCharArray()) {
            letters.append(hold.handAt(Face.of(core)).name());
        }
        return Facelets.read(letters.toString());
    }
}
