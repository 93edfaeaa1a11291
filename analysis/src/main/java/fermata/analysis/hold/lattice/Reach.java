package fermata.analysis.hold.lattice;

import fermata.analysis.hold.sequence.StreamFacts;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;

/**
 * What one hand can hardly turn in place: the back layer, which no free finger of it comes to. Common practice, no
 * source.
 *
 * <p>Stated as a weight and not learned: most last-layer sequences known here were written by people with two hands,
 * who do turn B, and the few one-handed solves are too few to teach the difference. Sizes of 1, 2 and 3 all read
 * one-handed solves better than none, on deals of folds that are not reported; this is one from between.
 */
public final class Reach {
    private static final double BACK = -1.5;

    private Reach() {}

    /** By feature: what it adds to the logarithm of a reading's weight. */
    public static double[] weights() {
        double[] weights = new double[Template.SIZE];
        for (Turn turn : Turn.all()) {
            for (StreamFacts.Phase phase : StreamFacts.Phase.values()) {
                if (turn.face() == Face.B) {
                    weights[Template.TURN.at(turn.index(), phase.ordinal())] = BACK;
                }
            }
        }
        return weights;
    }
}
