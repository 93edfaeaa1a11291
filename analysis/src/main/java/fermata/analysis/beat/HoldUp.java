package fermata.analysis.beat;

/** The kinds of place at which held-up intervals are alike in length and number. */
public enum HoldUp {
    /** Within a stage, nothing asked of the hand but the next turn. */
    INSIDE,
    /** Within a stage, where the fingers are likely to be set anew. */
    REGRIP,
    /** Within a stage, where the cube is likely to be turned as a whole. */
    ROTATION,
    /** Within a stage, between a turn and its taking back. */
    SLIP,
    /** At the first turn of a pair or block. */
    PAIR,
    /** There too, with the cube turned as a whole. */
    PAIR_ROTATION,
    /** At the first turn of a part of the last layer. */
    CASE,
    /** There too, with the cube turned as a whole. */
    CASE_ROTATION;
}
