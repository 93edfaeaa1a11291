package fermata.analysis.hold;

import fermata.decoder.cube.Face;

/**
 * For each turn, how probable it is that the solver saw its layer at U, R, F, D, L or B.
 *
 * <p>Immutable. Probabilities are 0..1 and sum to one for each turn.
 */
public final class LayerOdds {
    private final double[][] byTurn;

    public LayerOdds(double[][] byTurn) {
        this.byTurn = byTurn;
    }

    /** Certain odds: a reading that knows no doubt, for comparisons. */
    public static LayerOdds certain(HoldTrack track) {
        double[][] odds = new double[track.size()][6];
        for (int turn = 0; turn < odds.length; turn++) {
            odds[turn][track.layer(turn).ordinal()] = 1;
        }
        return new LayerOdds(odds);
    }

    /** The number of turns. */
    public int size() {
        return byTurn.length;
    }

    /** The probability that the layer of a turn was seen at {@code place}. */
    public double at(int turn, Face place) {
        return byTurn[turn][place.ordinal()];
    }
}
