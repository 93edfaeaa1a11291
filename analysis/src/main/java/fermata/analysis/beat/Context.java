package fermata.analysis.beat;

import fermata.decoder.cube.Turn;

/** What the hand has to do to get from one turn to the next: each has its own fluent pace. */
public enum Context {
    /** The same face again. */
    SAME,
    /** The face across. */
    OPPOSITE,
    /** A neighbouring face. */
    ADJACENT,
    /** As {@link #SAME}, inside a sequence that is known before it begins. */
    SAME_KNOWN,
    /** As {@link #OPPOSITE}, inside a sequence that is known before it begins. */
    OPPOSITE_KNOWN,
    /** As {@link #ADJACENT}, inside a sequence that is known before it begins. */
    ADJACENT_KNOWN,
    /** Any face, right after a wide turn; needs holds. */
    AFTER_WIDE;

    /**
     * The context of the second of two turns.
     *
     * @param known whether the second continues a sequence known before it began
     */
    public static Context of(Turn first, Turn second, boolean known) {
        if (first.face() == second.face()) {
            return known ? SAME_KNOWN : SAME;
        }
        if (first.face().sharesAxisWith(second.face())) {
            return known ? OPPOSITE_KNOWN : OPPOSITE;
        }
        return known ? ADJACENT_KNOWN : ADJACENT;
    }
}
