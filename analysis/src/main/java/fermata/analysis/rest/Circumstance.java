package fermata.analysis.rest;

/**
 * What is seen around a rest that makes a cause possible. The presences are where everybody begins: our own guesses, no
 * source. Those that the stream shows are learned from the solver's nights; those that it hides stay as they are, for a
 * fit would give them whatever the others leave.
 */
public enum Circumstance {
    /** A pair or block begins. */
    PAIR_BEGINS(Cause.LOOK_AHEAD, 0.8, true),
    /** A case is met: a stretch of the last layer begins. */
    CASE_BEGINS(Cause.RECOGNITION, 0.95, true),
    /** Only turns of the last layer's face since the case was met: an AUF before the case belongs to recognising it. */
    AFTER_FIRST_AUF(Cause.RECOGNITION, 0.3, false),
    /** A rotation was inferred; its own probability is used. */
    ROTATION_READ(Cause.ROTATION, 0.97, false),
    /** Holds are not known, a stretch begins. */
    ROTATION_GUESSED_AT_START(Cause.ROTATION, 0.2, false),
    /** Holds are not known, within a stretch that is not known before it begins. */
    ROTATION_GUESSED_INSIDE(Cause.ROTATION, 0.4, false),
    /** By where the fingers were left; the probability of a regrip is used. */
    REGRIP_NEEDED(Cause.REGRIP, 0.8, true),
    /** As {@link #REGRIP_NEEDED}, where the cube has just been turned as a whole. */
    REGRIP_AFTER_ROTATION(Cause.REGRIP, 0.6, true),
    /** No reason for a regrip seen. */
    REGRIP_UNSEEN(Cause.REGRIP, 0.03, false),
    /** Holds are not known, a stretch begins. */
    REGRIP_GUESSED_AT_START(Cause.REGRIP, 0.2, false),
    /** Holds are not known, within a stretch. */
    REGRIP_GUESSED_INSIDE(Cause.REGRIP, 0.6, false),
    /** Inside a turn and its taking back. */
    WITHIN_SLIP(Cause.SLIP, 0.95, false),
    /** Right after a slip was taken back. */
    AFTER_SLIP(Cause.SLIP, 0.1, false),
    /** Inside a last-layer sequence. */
    IN_SEQUENCE(Cause.MEMORY, 0.3, false),
    /** Always possible. */
    ANYWHERE(Cause.UNEXPLAINED, 0.03, false);

    private final Cause cause;
    private final double coldStart;
    private final boolean learned;

    Circumstance(Cause cause, double coldStart, boolean learned) {
        this.cause = cause;
        this.coldStart = coldStart;
        this.learned = learned;
    }

    /** Whether the presence is learned from the solver's nights. */
    boolean isLearned() {
        return learned;
    }

    /** What it makes possible. */
    public Cause cause() {
        return cause;
    }

    /** How likely the cause takes part in a rest there, before anything is learned. */
    public double coldStart() {
        return coldStart;
    }
}
