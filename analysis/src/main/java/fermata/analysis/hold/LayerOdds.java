package fermata.analysis.hold;

import fermata.decoder.cube.Face;
import java.util.List;

/**
 * For each turn, how probable it is that the solver saw its layer at U, R, F, D, L or B.
 *
 * <p>Immutable. Probabilities are 0..1 and sum to one for each turn.
 */
public final class LayerOdds {
    private final double[][] byTurn;

    LayerOdds(double[][] byTurn) {
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

    /** The odds of several readings of the same turns, each by its share. */
    static LayerOdds mixed(List<HoldReading> readings, double[] shares) {
        double[][] mixed = new double[readings.get(0).odds().size()][6];
        for (int reading = 0; reading < shares.length; reading++) {
            double[][] odds = readings.get(reading).odds().byTurn;
            for (int turn = 0; turn < mixed.length; turn++) {
                for (int place = 0; place < 6; place++) {
                    mixed[turn][place] += shares[reading] * odds[turn][place];
                }
            }
        }
        return new LayerOdds(mixed);
    }

    /** The number of turns. */
    public int size() {
        return byTurn.length;
    }

    /** The probability that the layer of a turn was seen at {@code place}. */
    public double at(int turn, Face place) {
        return byTurn[turn][place.ordinal()];
    }

    /** The same odds with left and right exchanged. */
    LayerOdds mirrored() {
        double[][] other = new double[byTurn.length][6];
        for (int turn = 0; turn < byTurn.length; turn++) {
            for (Face face : Face.values()) {
                other[turn][Mirror.of(face).ordinal()] = byTurn[turn][face.ordinal()];
            }
        }
        return new LayerOdds(other);
    }
}
