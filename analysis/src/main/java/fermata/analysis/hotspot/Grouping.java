package fermata.analysis.hotspot;

import java.util.Optional;

/** By what losses are added up. The coarser, the sooner something can be said. */
public enum Grouping {
    /** The change from one stage to the next, or the stage within which. */
    TRANSITION,
    /** The cause alone. */
    CAUSE,
    /** The change and the cause: what it mostly is that takes the time there. */
    TRANSITION_AND_CAUSE,
    /** Stage and case. */
    CASE,
    /** The hold alone. */
    HOLD,
    /** Everything at once. */
    ALL;

    HotspotKey of(HotspotKey key) {
        return switch (this) {
            case TRANSITION -> new HotspotKey(key.before(), key.after(), "", Optional.empty(), "");
            case TRANSITION_AND_CAUSE -> new HotspotKey(key.before(), key.after(), "", key.cause(), "");
            case CAUSE -> new HotspotKey(Optional.empty(), Optional.empty(), "", key.cause(), "");
            case CASE -> new HotspotKey(Optional.empty(), key.after(), key.caseName(), Optional.empty(), "");
            case HOLD -> new HotspotKey(Optional.empty(), Optional.empty(), "", Optional.empty(), key.hold());
            case ALL -> key;
        };
    }

    /** Whether a loss has what is grouped by: no stage without a method, no case outside pairs and last layer. */
    boolean counts(HotspotKey key) {
        return switch (this) {
            case CASE -> !key.caseName().isEmpty();
            case TRANSITION, TRANSITION_AND_CAUSE, ALL -> !key.after().isEmpty();
            case CAUSE, HOLD -> true;
        };
    }
}
