package fermata.rehearsal.truth;

import java.util.Objects;

/**
 * A pause, or the part of one that has this cause.
 *
 * @param afterTurn the turn before it, by its place in the evening
 * @param lengthMicros its length
 * @param cause why
 */
public record RestTruth(int afterTurn, long lengthMicros, RestCause cause) {
    public RestTruth {
        Objects.requireNonNull(cause, "cause");
        if (afterTurn < 0 || lengthMicros < 0) {
            throw new IllegalArgumentException(
                    "rest of " + lengthMicros + " micros after turn " + afterTurn + ": neither may be below zero");
        }
    }
}
