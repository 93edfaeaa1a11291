package fermata.rehearsal.truth;

import java.util.Objects;

/**
 * A regrip.
 *
 * @param beforeTurn the turn that needed it, by its place in the evening
 * @param reason what the fingers lacked
 */
public record RegripTruth(int beforeTurn, Reason reason) {
    public RegripTruth {
        Objects.requireNonNull(reason, "reason");
    }

    /** What makes a hand let go and take hold anew. */
    public enum Reason {
        /** The wrist had turned as far as it goes. */
        WRIST,
        /** The cube had just been rotated. */
        ROTATION,
        /** A side out of reach of the free fingers. */
        REACH
    }
}
