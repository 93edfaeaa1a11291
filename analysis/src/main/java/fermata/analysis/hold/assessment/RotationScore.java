package fermata.analysis.hold.assessment;

/**
 * How the rotations were found, wide turns and slices counting as turns with a rotation.
 *
 * @param truth rotations that were made
 * @param found rotations the reading has
 * @param hit found ones that were made
 * @param precision hit of found, with its interval over solves; 1 if none were found
 * @param recall hit of truth, likewise; 1 if none were made
 * @param f1 harmonic mean of both, likewise
 */
public record RotationScore(int truth, int found, int hit, Share precision, Share recall, Share f1) {
    /** Harmonic mean of precision and recall: hits of the mean of both counts. */
    static double f1(int truth, int found, int hit) {
        return ratio(2 * hit, truth + found);
    }

    static double ratio(int part, int whole) {
        return whole == 0 ? 1 : (double) part / whole;
    }
}
