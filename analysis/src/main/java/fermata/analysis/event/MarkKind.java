package fermata.analysis.event;

/** What a mark in the log says. */
public enum MarkKind {
    /** A scramble is announced; the text is its words in WCA notation. */
    SCRAMBLE,
    /** Practice begins here. */
    BEGIN,
    /** Practice ends here: an attempt that is not solved by now is abandoned. */
    END,
    /** A remark; the text is free. */
    NOTE
}
