package fermata.analysis.lookahead;

/**
 * What can be known about one piece.
 *
 * @param kind how it is known, if it is
 * @param placesLeft in how many places it may still be, at least 1
 */
public record Knowing(Kind kind, int placesLeft) {
    /** How a piece is known. */
    public enum Kind {
        /** Its own stickers told. */
        SEEN,
        /** Every other place excludes it, or is needed for another piece. */
        ELIMINATED,
        /** It may be in more than one place or way. */
        OPEN
    }

    public Knowing {
        if (placesLeft < 1) {
            throw new IllegalArgumentException("a piece is somewhere, not in " + placesLeft + " places");
        }
    }

    /** Whether place and orientation are known. */
    public boolean isIdentified() {
        return kind != Kind.OPEN;
    }
}
