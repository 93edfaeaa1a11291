package fermata.decoder.madeup;

/** What sort of cube a layout is for. */
public enum Family {
    /** One field for the turn. */
    ONE_FIELD,
    /** Face and direction apart. */
    TWO_FIELDS,
    /** The face, and by how many degrees or ticks it turned. */
    DEGREES,
    /** A frame now and then, with all that is new in it. */
    SEVERAL_TURNS,
    /** Turns, and now and then the whole state. */
    TURNS_AND_STATE,
    /** The whole state after each turn, by stickers. */
    STATE_STICKERS,
    /** The whole state after each turn, by cubies. */
    STATE_CUBIES;

    boolean sendsOnlyStates() {
        return this == STATE_STICKERS || this == STATE_CUBIES;
    }
}
