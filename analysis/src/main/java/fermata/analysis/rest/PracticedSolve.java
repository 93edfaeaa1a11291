package fermata.analysis.rest;

import fermata.analysis.record.SolveRecord;
import java.util.Objects;

/**
 * A solve with all that its rests are read from.
 *
 * @param record the solve
 * @param hand what the hand did
 * @param solveOfNight how many solves of the night came before, from 0
 */
public record PracticedSolve(SolveRecord record, HandFacts hand, int solveOfNight) {
    public PracticedSolve {
        Objects.requireNonNull(record, "record");
        Objects.requireNonNull(hand, "hand");
        if (solveOfNight < 0) {
            throw new IllegalArgumentException("solveOfNight " + solveOfNight + " is below zero");
        }
    }
}
