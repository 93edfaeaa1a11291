package fermata.daemon.reading;

/**
 * What became of the frames of a capture.
 *
 * @param heard turns heard
 * @param repaired turns read from a later frame's history
 * @param lost turns that are known to be lost
 * @param openGaps gaps of which nobody knows how many turns they hold
 * @param rejectedFrames frames that could not be read
 * @param impossibleStates states that no turning reaches, left out
 */
public record Tally(long heard, long repaired, long lost, long openGaps, long rejectedFrames, long impossibleStates) {}
