package fermata.analysis.hold;

/** The one check every stated probability passes. */
final class Probability {
    /** Sums of rounded terms may stand this far outside 0..1. */
    static final double SLACK = 1e-9;

    private Probability() {}

    static void check(double probability, String of) {
        if (!(probability >= -SLACK && probability <= 1 + SLACK)) {
            throw new IllegalArgumentException("probability " + probability + " of " + of + " is not in 0..1");
        }
    }
}
