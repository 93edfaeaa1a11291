package fermata.rehearsal.truth;

/** Why a virtual cuber paused. */
public enum RestCause {
    /** The next pair had not been found in time. */
    LOOK_AHEAD,
    /** A last-layer case had to be recognised. */
    RECOGNITION,
    /** The whole cube was turned in the hand. */
    ROTATION,
    /** The fingers were set anew. */
    REGRIP,
    /** A wrong turn was noticed. */
    SLIP
}
