package fermata.analysis.hold.assessment;

/**
 * How the rotations were found, wide turns and slices counting as turns with a rotation.
 *
 * @param truth rotations that were made
 * @param found rotations the reading has
 * @param hit found ones that were made
 * @param precision hit of found, 0..1; 1 if none were found
 * @param recall hit of truth, 0..1; 1 if none were made
 * @param f1 harmonic mean of both, with its interval over solves
 */
public record RotationScore(int truth, int found, int hit, double precision, double recall, Share f1) {
    static RotationScore of(int truth, int found, int hit, Share f1) {
        return new RotationScore(truth, found, hit, ratio(hit, found), ratio(hit, truth), f1);
    }

    /** Harmonic mean of precision and recall: hits of the mean of both counts. */
    static double f1(int truth, int found, int hit) {
        return ratio(2 * hit, truth + found);
    }

    static double ratio(int part, int whole) {
        return whole == 0 ? 1 : (double) part / whole;
    }
}
