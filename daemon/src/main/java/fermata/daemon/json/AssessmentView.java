package fermata.daemon.json;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;

/**
 * Inferred holds held against written ones, as {@code assess --json} prints it; docs/formats.md says what each member
 * means.
 */
public record AssessmentView(
        String file,
        String learnedFrom,
        int walkthroughsLeftOut,
        @JsonUnwrapped Part all,
        List<Part> hands,
        List<Part> methods) {
    /** All solves of one kind, by three readers; the first reader's figures are the part's own. */
    public record Part(
            String method, String hand, @JsonUnwrapped Figures model, Figures neverRotates, Figures markov) {}

    /** What one reader reached. Intervals are two numbers; a reader that states no probability has no log score. */
    public record Figures(
            int solves,
            int turns,
            double holdShare,
            List<Double> holdShareInterval,
            double layerShare,
            List<Double> layerShareInterval,
            Rotations rotations,
            int solvesAllRight,
            Double logScore,
            Double calibrationError,
            List<Bin> reliability) {}

    /** How rotations were found, wide turns and slices included. */
    public record Rotations(
            int truth,
            int found,
            int hit,
            double precision,
            List<Double> precisionInterval,
            double recall,
            List<Double> recallInterval,
            double f1,
            List<Double> f1Interval) {}

    /** A tenth of the stated probabilities. */
    public record Bin(double from, double to, int turns, int right, double stated) {}
}
