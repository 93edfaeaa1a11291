package fermata.analysis.rest;

/** Whether, and why, the fingers are likely to be set anew before a turn. */
public enum Regrip {
    /** No reason seen. */
    NONE,
    /** The wrist would have to go further than it does. */
    WRIST,
    /** The side is out of reach of the free fingers. */
    REACH,
    /** The cube has just been turned as a whole. */
    AFTER_ROTATION,
    /** Holds are not known, or two hands turn: nothing can be said. */
    UNTOLD
}
