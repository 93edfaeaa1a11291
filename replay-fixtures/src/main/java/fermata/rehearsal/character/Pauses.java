package fermata.rehearsal.character;

/**
 * What keeps a virtual cuber from turning. Lengths are log-normal around these medians.
 *
 * @param lookAheadProbability how likely the next pair has not been found when the last one is in
 * @param lookAheadMicros median of the search that follows
 * @param orientMicros median of recognising a case before orienting
 * @param permuteMicros median of recognising a case before permuting
 * @param rotationMicros median of a quarter rotation of the whole cube
 * @param regripMicros median of a regrip
 * @param spread standard deviation of the pause's logarithm
 */
public record Pauses(
        double lookAheadProbability,
        long lookAheadMicros,
        long orientMicros,
        long permuteMicros,
        long rotationMicros,
        long regripMicros,
        double spread) {
    public Pauses {
        Ranges.requireShare("lookAheadProbability", lookAheadProbability);
        Ranges.requirePositive("lookAheadMicros", lookAheadMicros);
        Ranges.requirePositive("orientMicros", orientMicros);
        Ranges.requirePositive("permuteMicros", permuteMicros);
        Ranges.requirePositive("rotationMicros", rotationMicros);
        Ranges.requirePositive("regripMicros", regripMicros);
        Ranges.requireShare("spread", spread);
    }
}
