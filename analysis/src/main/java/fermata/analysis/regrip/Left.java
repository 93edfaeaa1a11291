package fermata.analysis.regrip;

/** Where the hand was left by what it did last. */
enum Left {
    /** Where a solve begins: every finger in its place. */
    HOME,
    /** The index finger lies over the top. */
    INDEX,
    /** The ring or little finger lies under the bottom. */
    RING,
    /** The thumb is off the front. */
    THUMB,
    /** More than a finger has moved. */
    PALM,
    /** The cube was turned as a whole under the fingers. */
    ADRIFT;

    /** Where a finger leaves the hand; the wrist takes its side along and leaves the fingers in place. */
    static Left by(Finger finger) {
        return switch (finger) {
            case INDEX -> INDEX;
            case WRIST -> HOME;
            case RING -> RING;
            case THUMB -> THUMB;
            case PALM -> PALM;
        };
    }
}
