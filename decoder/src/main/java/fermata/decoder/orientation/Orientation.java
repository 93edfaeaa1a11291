package fermata.decoder.orientation;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Facelets;
import fermata.decoder.cube.Turn;
import java.util.List;

/**
 * One of the 24 ways to hold a cube: which centre is where the solver sees U, R, F, D, L and B.
 *
 * <p>An orientation is also the rotation that leads to it from the {@link #IDENTITY}, so orientations multiply:
 * {@code hold.then(rotation)} is the hold after the rotation, whose axes are the solver's. Immutable, thread-safe,
 * one instance each: compare with {@code ==}. All look-ups are table steps.
 */
public final class Orientation {
    private static final Orientation[] ALL = Rotations.enumerate();

    /** Held by the centres: U up, F in front. */
    public static final Orientation IDENTITY = ALL[0];

    private final int index;
    private final Face[] coreAt;
    private final Face[] handAt;
    private final int[] placesSeen;
    private final String word;

    Orientation(int index, Face[] coreAt, String word) {
        this.index = index;
        this.coreAt = coreAt;
        this.word = word;
        this.handAt = new Face[6];
        for (Face hand : Face.values()) {
            handAt[coreAt[hand.ordinal()].ordinal()] = hand;
        }
        this.placesSeen = Facelets.placesSeen(hand -> coreAt[hand.ordinal()]);
    }

    /** All 24, by {@link #index()}; the identity first. */
    public static List<Orientation> all() {
        return List.of(ALL);
    }

    /** The orientation of an {@link #index()}. */
    public static Orientation ofIndex(int index) {
        return ALL[index];
    }

    /**
     * The orientation with the given centres up and in front.
     *
     * @throws IllegalArgumentException if one cannot be up while the other is in front
     */
    public static Orientation of(Face up, Face front) {
        for (Orientation orientation : ALL) {
            if (orientation.coreAt(Face.U) == up && orientation.coreAt(Face.F) == front) {
                return orientation;
            }
        }
        throw new IllegalArgumentException(up + " cannot be up while " + front + " is in front");
    }

    /** The orientation written by {@link #letters()}: two face letters, up and front. */
    public static Orientation ofLetters(String letters) {
        if (letters.length() != 2) {
            throw new IllegalArgumentException("hold \"" + letters + "\" is not two face letters, up and front");
        }
        return of(Face.of(letters.charAt(0)), Face.of(letters.charAt(1)));
    }

    /** The rotation that turns the whole cube as {@code face} would turn, by clockwise quarters (any integer). */
    public static Orientation turning(Face face, int quarters) {
        return Rotations.turning(face, Math.floorMod(quarters, 4));
    }

    /** A number in 0..23. */
    public int index() {
        return index;
    }

    /** The centre where the solver sees {@code hand}. */
    public Face coreAt(Face hand) {
        return coreAt[hand.ordinal()];
    }

    /** Where the solver sees the centre {@code core}. */
    public Face handAt(Face core) {
        return handAt[core.ordinal()];
    }

    /** The core-frame turn of a turn made in this hold. */
    public Turn toCore(Turn hand) {
        return Turn.of(coreAt(hand.face()), hand.quarters());
    }

    /** What a core-frame turn looks like in this hold. */
    public Turn toHand(Turn core) {
        return Turn.of(handAt(core.face()), core.quarters());
    }

    /** The hold after a rotation about the solver's own axes. */
    public Orientation then(Orientation rotation) {
        return Rotations.product(this, rotation);
    }

    /** The rotation that takes this one back. */
    public Orientation inverse() {
        return Rotations.inverse(this);
    }

    /** The rotation that leads from this hold to {@code other}. */
    public Orientation to(Orientation other) {
        return inverse().then(other);
    }

    /** The 54 letters as the solver sees them, each naming the centre whose colour shows there. */
    public String facelets(CubeState state) {
        String core = state.facelets();
        StringBuilder seen = new StringBuilder(placesSeen.length);
        for (int place : placesSeen) {
            seen.append(core.charAt(place));
        }
        return seen.toString();
    }

    /** For a place (0..53) as the solver sees it, the place on the cube held by its centres. */
    public int placeSeen(int handPlace) {
        return placesSeen[handPlace];
    }

    /** Two letters: the centre that is up and the one in front. */
    public String letters() {
        return coreAt(Face.U).name() + coreAt(Face.F).name();
    }

    /** A shortest word in x, y, z for the rotation from the identity; empty for the identity itself. */
    public String word() {
        return word;
    }

    Face[] coreAt() {
        return coreAt;
    }

    /** The two {@link #letters()}. */
    @Override
    public String toString() {
        return letters();
    }
}
