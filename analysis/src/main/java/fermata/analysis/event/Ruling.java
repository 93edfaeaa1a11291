package fermata.analysis.event;

/** What somebody says about an attempt afterwards. The last word on each question holds. */
public enum Ruling {
    /** It was solved, whatever the tracked state says. */
    SOLVED,
    /** It was given up, whatever the tracked state says. */
    ABANDONED,
    /** It shall not count in averages and findings. */
    SET_ASIDE,
    /** Takes back {@link #SET_ASIDE}. */
    BACK_IN
}
