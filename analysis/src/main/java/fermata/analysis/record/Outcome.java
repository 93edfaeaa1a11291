package fermata.analysis.record;

/** How an attempt ended. */
public enum Outcome {
    /** The tracked state reached the reference, or a verdict says so. */
    SOLVED,
    /** It ended unsolved: the turning stopped, a new scramble began, practice ended, or a verdict says so. */
    ABANDONED,
    /** Turns were lost on the way and nothing afterwards tells whether it was solved. */
    UNKNOWN_AFTER_GAP
}
