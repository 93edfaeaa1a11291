package fermata.analysis.regrip;

/** What makes a turn. */
public enum Finger {
    /** The index finger, by a flick or a push. */
    INDEX,
    /** The wrist with the ring and little finger, which take a side along. */
    WRIST,
    /** The ring or little finger alone. */
    RING,
    /** The thumb. */
    THUMB,
    /** More than a finger: the whole hand, or the table. */
    PALM
}
