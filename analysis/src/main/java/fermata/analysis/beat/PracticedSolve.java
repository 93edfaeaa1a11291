package fermata.analysis.beat;

import fermata.analysis.record.SolveRecord;
import java.util.List;
import java.util.Objects;

/**
 * A solve with all that its rests are read from.
 *
 * @param record the solve
 * @param hand what the hand did
 * @param solveOfNight how many solves of the night came before, from 0
 * @param regrips by turn, how likely the hand took hold anew before it by the turns alone, not the times: those are
 *     what a rest is judged by. Empty if untold
 */
public record PracticedSolve(SolveRecord record, HandFacts hand, int solveOfNight, List<Double> regrips) {
    public PracticedSolve {
        Objects.requireNonNull(record, "record");
        Objects.requireNonNull(hand, "hand");
        regrips = List.copyOf(regrips);
        if (solveOfNight < 0) {
            throw new IllegalArgumentException("solveOfNight " + solveOfNight + " is below zero");
        }
    }

    /** With the regrips that the hand's turns tell. Cost: that of reading regrips, which is most of reading rests. */
    public PracticedSolve(SolveRecord record, HandFacts hand, int solveOfNight) {
        this(record, hand, solveOfNight, Timeline.regrips(record, hand));
    }
}
