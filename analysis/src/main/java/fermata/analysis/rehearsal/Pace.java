package fermata.analysis.rehearsal;

/**
 * How fast a virtual cuber turns when nothing has to be thought about. Intervals are log-normal around these medians.
 *
 * @param sameFaceMicros median from one turn to the next of the same face
 * @param adjacentMicros median to the next turn of a neighbouring face
 * @param oppositeMicros median to the next turn of the face across
 * @param knownFactor by which intervals shrink inside a sequence known by heart, at most 1
 * @param spread standard deviation of the interval's logarithm
 * @param tiringPerSolve share by which everything slows with each solve of an evening
 */
public record Pace(
        long sameFaceMicros,
        long adjacentMicros,
        long oppositeMicros,
        double knownFactor,
        double spread,
        double tiringPerSolve) {
    public Pace {
        Probability.requirePositive("sameFaceMicros", sameFaceMicros);
        Probability.requirePositive("adjacentMicros", adjacentMicros);
        Probability.requirePositive("oppositeMicros", oppositeMicros);
        Probability.requirePositive("knownFactor", knownFactor);
        Probability.require("knownFactor", knownFactor);
        Probability.require("spread", spread);
        Probability.require("tiringPerSolve", tiringPerSolve);
    }
}
