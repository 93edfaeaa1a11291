package fermata.analysis.goal;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Facelets;
import fermata.decoder.orientation.Orientation;

/**
 * A state as seen in a hold: pieces and faces are named by where they are in it.
 *
 * <p>What is home is asked of the {@link CoreState}, a table step; only for what is not home the state is renamed,
 * once. Not thread-safe.
 */
public final class HeldState {
    private static final CubeState[] ROTATED =
            Orientation.all().stream().map(HeldState::rotated).toArray(CubeState[]::new);

    private final CoreState core;
    private final Orientation hold;
    private CubeState renamed;

    public HeldState(CoreState core, Orientation hold) {
        this.core = core;
        this.hold = hold;
    }

    /** Held by the centres. */
    public static HeldState of(CubeState state) {
        return new HeldState(new CoreState(state), Orientation.IDENTITY);
    }

    /** The state as it would be called by somebody who named the faces by where they are in {@code hold}. */
    public static CubeState renamed(CubeState state, Orientation hold) {
        CubeState rotated = ROTATED[hold.index()];
        return rotated.inverse().then(state).then(rotated);
    }

    /** Which core piece is in which place as seen, with centres that stayed. */
    private static CubeState rotated(Orientation hold) {
        String solved = CubeState.SOLVED.facelets();
        StringBuilder letters = new StringBuilder(solved);
        for (int place = 0; place < solved.length(); place++) {
            if (place % 9 != 4) {
                letters.setCharAt(place, solved.charAt(hold.placeSeen(place)));
            }
        }
        return Facelets.read(letters.toString());
    }

    /** Whether all these pieces are home. */
    public boolean has(PieceSet pieces) {
        return pieces.isWithin(core.home(Face.U, 0), hold);
    }

    /** Whether they are after so many clockwise quarters of a face, 0..3. */
    public boolean hasAfter(Face face, int quarters, PieceSet pieces) {
        return pieces.isWithin(core.home(hold.coreAt(face), quarters), hold);
    }

    /** Whether they are but for a turn of a face, or as it is. */
    public boolean hasUpToTurn(Face face, PieceSet pieces) {
        Face turned = hold.coreAt(face);
        return pieces.isWithin(core.home(turned, 0), hold)
                || pieces.isWithin(core.home(turned, 1), hold)
                || pieces.isWithin(core.home(turned, 2), hold)
                || pieces.isWithin(core.home(turned, 3), hold);
    }

    /** The state by the names of the centres. */
    public CubeState core() {
        return core.state();
    }

    /** The state by the names of the hold. */
    public CubeState renamed() {
        if (renamed == null) {
            renamed = renamed(core.state(), hold);
        }
        return renamed;
    }
}
