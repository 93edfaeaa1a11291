package fermata.analysis.beat;

import java.util.Objects;

/**
 * The time from one turn to the next, and what is known of it before looking at its length.
 *
 * @param afterTurn the first of the two turns, by its index in the solve
 * @param micros microseconds, at least 0
 * @param context what the hand has to do
 * @param place where in the solve
 * @param solveOfNight how many solves of the night came before, from 0
 */
public record Beat(int afterTurn, long micros, Context context, Place place, int solveOfNight) {
    public Beat {
        Objects.requireNonNull(context, "context");
        Objects.requireNonNull(place, "place");
        if (afterTurn < 0 || micros < 0 || solveOfNight < 0) {
            throw new IllegalArgumentException("beat of " + micros + " us after turn " + afterTurn + " of solve "
                    + solveOfNight + ": none may be below zero");
        }
    }
}
