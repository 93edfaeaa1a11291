package fermata.analysis.hotspot;

/** By what losses are added up. The coarser, the sooner something can be said. */
public enum Grouping {
    /** The change from one stage to the next, or the stage within which. */
    TRANSITION,
    /** The cause alone. */
    CAUSE,
    /** Stage and case. */
    CASE,
    /** The hold alone. */
    HOLD,
    /** Everything at once. */
    ALL;

    HotspotKey of(HotspotKey key) {
        return switch (this) {
            case TRANSITION -> new HotspotKey(key.before(), key.after(), "", "", "");
            case CAUSE -> new HotspotKey("", "", "", key.cause(), "");
            case CASE -> new HotspotKey("", key.after(), key.caseName(), "", "");
            case HOLD -> new HotspotKey("", "", "", "", key.hold());
            case ALL -> key;
        };
    }

    /** Whether a loss has what is grouped by: outside the pairs and the last layer no case is met. */
    boolean counts(HotspotKey key) {
        return this != CASE || !key.caseName().isEmpty();
    }
}
