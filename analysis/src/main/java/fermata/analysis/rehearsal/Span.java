package fermata.analysis.rehearsal;

/**
 * Turns of an evening, by their places in its list; half open.
 *
 * @param from the first turn
 * @param to one past the last; equal to {@code from} if there is none
 */
public record Span(int from, int to) {
    public Span {
        if (from < 0 || to < from) {
            throw new IllegalArgumentException("span " + from + ".." + to + " runs backwards or below zero");
        }
    }

    /** How many turns. */
    public int size() {
        return to - from;
    }
}
