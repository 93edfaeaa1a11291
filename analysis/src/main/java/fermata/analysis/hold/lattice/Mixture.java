package fermata.analysis.hold.lattice;

import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.LayerOdds;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Several beliefs about the same turns, each by its share. Cost: that of the sums, 36 products a turn and belief. */
final class Mixture {
    private static final int PLACES = 6;

    private final List<Beliefs> beliefs;
    private final double[] shares;
    private final int turns;

    /**
     * Mixes.
     *
     * @param shares sum to one
     */
    Mixture(List<Beliefs> beliefs, double[] shares, int turns) {
        this.beliefs = beliefs;
        this.shares = shares;
        this.turns = turns;
    }

    private interface Asked {
        double of(Beliefs beliefs);
    }

    private double mean(Asked asked) {
        double sum = 0;
        for (int one = 0; one < shares.length; one++) {
            sum += shares[one] * asked.of(beliefs.get(one));
        }
        return sum;
    }

    /** The layers whose neighbouring pairs are likeliest on the sum: the reading with most holds right on average. */
    int[] likeliest() {
        double[] best = new double[PLACES];
        Arrays.setAll(best, layer -> mean(one -> one.first(layer)));
        int[][] from = new int[turns][PLACES];
        for (int turn = 1; turn < turns; turn++) {
            best = step(best, turn, from[turn]);
        }
        int layer = 0;
        for (int other = 1; other < PLACES; other++) {
            layer = best[other] > best[layer] ? other : layer;
        }
        int[] layers = new int[turns];
        for (int turn = turns - 1; turn >= 0; turn--) {
            layers[turn] = layer;
            layer = from[turn][layer];
        }
        return layers;
    }

    private double[] step(double[] best, int turn, int[] from) {
        double[] now = new double[PLACES];
        for (int layer = 0; layer < PLACES; layer++) {
            now[layer] = -1;
            for (int before = 0; before < PLACES; before++) {
                int first = before;
                int second = layer;
                double sum = best[before] + mean(one -> one.pair(turn, first, second));
                if (sum > now[layer]) {
                    now[layer] = sum;
                    from[layer] = before;
                }
            }
        }
        return now;
    }

    /** The likeliest holds with these layers, by the belief of the greatest share. */
    HoldTrack track(int[] layers) {
        int best = 0;
        for (int one = 1; one < shares.length; one++) {
            best = shares[one] > shares[best] ? one : best;
        }
        return beliefs.get(best).track(layers);
    }

    /** By turn: how likely its hold is right in a reading with these layers. */
    double[] sure(int[] layers) {
        double[] sure = new double[turns];
        Arrays.setAll(sure, turn -> Math.min(1, mean(one -> one.holdRight(layers, turn))));
        return sure;
    }

    LayerOdds odds() {
        double[][] odds = new double[turns][PLACES];
        for (int turn = 0; turn < turns; turn++) {
            int at = turn;
            Arrays.setAll(odds[turn], layer -> mean(one -> one.stated(at, layer)));
        }
        return new LayerOdds(odds);
    }

    List<Double> rotated() {
        List<List<Double>> all = beliefs.stream().map(Beliefs::rotated).toList();
        return IntStream.range(0, turns)
                .mapToObj(turn -> IntStream.range(0, shares.length)
                        .mapToDouble(one -> shares[one] * all.get(one).get(turn))
                        .sum())
                .toList();
    }
}
