package fermata.decoder.cube;

/**
 * A half-open run of turns. Merged turns (U U as one half turn, a slice as two faces) are spans, never new turns.
 *
 * @param from the first turn
 * @param to one past the last turn; equal to {@code from} for an empty run
 */
public record Span(int from, int to) {
    public Span {
        if (from < 0 || to < from) {
            throw new IllegalArgumentException("span " + from + ".." + to + " is negative or runs backwards");
        }
    }

    /** How many turns. */
    public int length() {
        return to - from;
    }

    /** Whether there is no turn in it. */
    public boolean isEmpty() {
        return to == from;
    }

    /** Whether the turn lies in it. */
    public boolean contains(int turn) {
        return from <= turn && turn < to;
    }
}
