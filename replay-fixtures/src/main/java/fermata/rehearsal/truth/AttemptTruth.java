package fermata.rehearsal.truth;

import java.util.Objects;

/**
 * One attempt of an evening.
 *
 * @param number from 1
 * @param note what the solver might have written beside it
 * @param scramble how the cube was scrambled
 * @param solve what was done then
 */
public record AttemptTruth(int number, String note, ScrambleTruth scramble, SolveTruth solve) {
    public AttemptTruth {
        Objects.requireNonNull(note, "note");
        Objects.requireNonNull(scramble, "scramble");
        Objects.requireNonNull(solve, "solve");
    }
}
