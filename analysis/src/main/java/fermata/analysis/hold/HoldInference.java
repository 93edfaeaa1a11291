package fermata.analysis.hold;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.Arrays;
import java.util.List;

/**
 * Infers what the hand did from what the centres felt.
 *
 * <p>Sums over all readings give, for each turn, how likely its layer was seen where; the answer is the reading
 * that gets most holds right on average, written in its likeliest way. Immutable and thread-safe. Cost: linear
 * in turns, about 0.2 ms a turn and 10 KB a turn while it runs.
 */
public final class HoldInference {
    private final HoldWeights weights;

    /** Infers with these weights. */
    public HoldInference(HoldWeights weights) {
        this.weights = weights;
    }

    /** Reads a stream. */
    public HoldReading infer(HoldQuestion question) {
        List<Turn> turns = question.turns();
        StreamFacts facts = new StreamFacts(question.start(), turns);
        Features features = new Features(facts);
        boolean oneHand = question.hand() == Hand.LEFT;
        double[] sum = weights.of(HoldWeights.Circle.of(oneHand, facts.edgesFirst()));
        Scores scores = new Scores(features, sum);
        Chain chain = new Chain(scores);
        Marginals marginals = new Marginals(features, scores, chain);
        double[][] odds = marginals.layers();
        int[] layers = likeliest(marginals, odds);
        boolean[][] allowed = new boolean[turns.size()][Holds.COUNT];
        for (int turn = 0; turn < turns.size(); turn++) {
            int[] seen = features.layers(turn);
            for (int hold = 0; hold < Holds.COUNT; hold++) {
                allowed[turn][hold] = seen[hold] == layers[turn];
            }
        }
        int[] holds = BestPath.of(scores.only(allowed));
        HoldTrack track = new HoldTrack(
                turns, Arrays.stream(holds).mapToObj(Orientation::ofIndex).toList());
        double[] sure = new double[turns.size()];
        Arrays.setAll(sure, turn -> Math.min(1, marginals.holdRight(turns, layers, turn)));
        return Writing.of(track, sure, new LayerOdds(odds), chain.logTotal);
    }

    /** The layers whose neighbouring pairs are likeliest on the sum: the reading with most holds right on average. */
    private static int[] likeliest(Marginals marginals, double[][] odds) {
        int turns = odds.length;
        double[] best = odds[0].clone();
        int[][] from = new int[turns][6];
        for (int turn = 1; turn < turns; turn++) {
            double[][] pair = marginals.pair(turn - 1, turn);
            double[] now = new double[6];
            for (int layer = 0; layer < 6; layer++) {
                now[layer] = -1;
                for (int before = 0; before < 6; before++) {
                    double sum = best[before] + pair[before][layer];
                    if (sum > now[layer]) {
                        now[layer] = sum;
                        from[turn][layer] = before;
                    }
                }
            }
            best = now;
        }
        int layer = 0;
        for (Face face : Face.values()) {
            layer = best[face.ordinal()] > best[layer] ? face.ordinal() : layer;
        }
        int[] layers = new int[turns];
        for (int turn = turns - 1; turn >= 0; turn--) {
            layers[turn] = layer;
            layer = from[turn][layer];
        }
        return layers;
    }
}
