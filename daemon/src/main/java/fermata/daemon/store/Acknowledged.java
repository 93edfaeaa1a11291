package fermata.daemon.store;

/**
 * How much a practice has acknowledged since its rows are counted.
 *
 * @param frames the number of the last frame
 * @param events the number of the last told event
 * @param captures the number of the last capture
 */
record Acknowledged(long frames, long events, long captures) {
    static final Acknowledged NOTHING = new Acknowledged(0, 0, 0);

    Acknowledged {
        if (frames < 0 || events < 0 || captures < 0) {
            throw new IllegalArgumentException(
                    "counts " + frames + ", " + events + ", " + captures + " must not be negative");
        }
    }

    /** The larger of each. */
    Acknowledged orMore(Acknowledged other) {
        return new Acknowledged(
                Math.max(frames, other.frames), Math.max(events, other.events), Math.max(captures, other.captures));
    }
}
