package fermata.analysis.hotspot;

import java.util.Objects;

/**
 * A last-layer case as this solver does it.
 *
 * @param stage {@code orient} or {@code permute}
 * @param caseName its number or letter
 * @param met in how many solves
 * @param recognitionMicros median, from the stage before to the first turn after an AUF
 * @param executionMicros median, from there to the last turn
 * @param turnsPerSecond median of the execution; half turns count once (HTM)
 * @param sequence the most frequent one, as the hand did it where holds are known, else as the centres felt it
 * @param costMicros how likely the case is met, times how much longer it takes than the solver's median case of that
 *     stage; below 0 where it is faster
 */
public record CaseRow(
        String stage,
        String caseName,
        int met,
        double recognitionMicros,
        double executionMicros,
        double turnsPerSecond,
        String sequence,
        double costMicros) {
    public CaseRow {
        Objects.requireNonNull(stage, "stage");
        Objects.requireNonNull(caseName, "caseName");
        Objects.requireNonNull(sequence, "sequence");
        if (met < 1) {
            throw new IllegalArgumentException("case " + caseName + " of " + stage + " was met " + met + " times");
        }
    }
}
