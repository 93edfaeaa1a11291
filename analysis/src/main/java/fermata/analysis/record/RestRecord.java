package fermata.analysis.record;

import java.util.Objects;

/**
 * An interval between two turns that the night's own rhythm does not explain.
 *
 * @param afterTurn the turn before it, by {@link TurnRecord#index()}
 * @param startMicros when that turn came, since the solve's first turn
 * @param lengthMicros until the next turn
 * @param fermata whether it is a fermata
 */
public record RestRecord(int afterTurn, long startMicros, long lengthMicros, FermataJudgement fermata) {
    public RestRecord {
        if (afterTurn < 0 || lengthMicros <= 0) {
            throw new IllegalArgumentException(
                    "a rest after turn " + afterTurn + " of " + lengthMicros + " us is none: both must be real");
        }
        Objects.requireNonNull(fermata, "fermata");
    }
}
