package fermata.rehearsal.character;

/** What a left hand does, once the cross stands, about the side it holds (a right hand the same in the mirror). */
public enum LeftSide {
    /** Tilts the cube (z), so that it is up and the upper side is right, and tilts it back. */
    TILTED,
    /** Turns the whole cube about until it need not be turned. */
    FACED,
    /** Turns it where it is, letting go for a moment. */
    IN_PLACE
}
