package fermata.analysis.goal;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;

/**
 * A state in the core frame, and which of its pieces are home as it is and after one more turn. Home is home in
 * whatever hold, so that this is found once for all of them. Immutable. Cost: 19 looks at 20 pieces.
 */
public final class CoreState {
    private final CubeState state;
    private final int[] home = new int[4 * Face.values().length];

    public CoreState(CubeState state) {
        this.state = state;
        int asItIs = state.home();
        for (Face face : Face.values()) {
            home[4 * face.ordinal()] = asItIs;
            for (int quarters = 1; quarters <= 3; quarters++) {
                home[4 * face.ordinal() + quarters] = state.homeAfter(Turn.of(face, quarters));
            }
        }
    }

    CubeState state() {
        return state;
    }

    /** As in {@link CubeState#home()}, after so many quarters of a face, 0..3. */
    int home(Face face, int quarters) {
        return home[4 * face.ordinal() + quarters];
    }
}
