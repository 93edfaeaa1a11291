package fermata.rehearsal.character;

/**
 * How fast a virtual cuber turns when nothing has to be thought about. Intervals are log-normal around these medians.
 *
 * @param sameFaceMicros median from one turn to the next of the same face
 * @param adjacentMicros median to the next turn of a neighbouring face
 * @param oppositeMicros median to the next turn of the face across
 * @param knownFactor by which intervals shrink inside a sequence known by heart, at most 1
 * @param spread standard deviation of the interval's logarithm
 * @param tiringPerSolve share by which everything slows with each solve of an evening, up to a tenth in all
 */
public record Pace(
        long sameFaceMicros,
        long adjacentMicros,
        long oppositeMicros,
        double knownFactor,
        double spread,
        double tiringPerSolve) {
    public Pace {
        Ranges.requirePositive("sameFaceMicros", sameFaceMicros);
        Ranges.requirePositive("adjacentMicros", adjacentMicros);
        Ranges.requirePositive("oppositeMicros", oppositeMicros);
        Ranges.requirePositive("knownFactor", knownFactor);
        Ranges.requireShare("knownFactor", knownFactor);
        Ranges.requireShare("spread", spread);
        Ranges.requireShare("tiringPerSolve", tiringPerSolve);
    }
}
