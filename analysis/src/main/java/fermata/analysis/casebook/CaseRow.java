package fermata.analysis.casebook;

import java.util.List;
import java.util.Objects;

/**
 * A case as this solver does it.
 *
 * @param stage {@code orient}, {@code permute}, or {@code pair} for all four
 * @param caseName its number or letter
 * @param met how often it was met
 * @param recognitionMicros median, from the stage before to the first turn after an AUF
 * @param executionMicros median, from there to the last turn
 * @param turnsPerSecond median of the execution, in HTM
 * @param sequence the most frequent one, as the hand did it where holds are known, else as the centres felt it
 * @param usualMicros the solver's own median over all cases of that stage; of pairs of several numbers, the median
 *     of what is usual for each
 * @param costMicros how often the case is met per solve, times how much longer recognition and execution take than
 *     what is usual, all three as told here; below 0 where they are shorter
 * @param examples those that took longest beyond what is usual, the longest first
 */
public record CaseRow(
        String stage,
        String caseName,
        int met,
        double recognitionMicros,
        double executionMicros,
        double turnsPerSecond,
        String sequence,
        double usualMicros,
        double costMicros,
        List<Example> examples) {
    /** How many examples a case gives, at most. */
    static final int EXAMPLES = 3;

    /** Where the case was met: in which solve, and when in it the stage before had ended. */
    public record Example(String solveId, long atMicros) {
        public Example {
            Objects.requireNonNull(solveId, "solveId");
        }
    }

    public CaseRow {
        Objects.requireNonNull(stage, "stage");
        Objects.requireNonNull(caseName, "caseName");
        Objects.requireNonNull(sequence, "sequence");
        examples = List.copyOf(examples);
        if (met < 1) {
            throw new IllegalArgumentException("case " + caseName + " of " + stage + " was met " + met + " times");
        }
    }

    /** Whether it was met too rarely to say what it costs. */
    public boolean isFew() {
        return met < CaseLedger.NEEDED;
    }
}
