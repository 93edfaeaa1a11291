package fermata.analysis.hold;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * Infers what the hand did from what the centres felt.
 *
 * <p>Sums over all readings give, for each turn, how likely its layer was seen where; the answer is the reading
 * that gets most holds right on average, written in its likeliest way. Immutable and thread-safe. Cost: linear
 * in turns, about 0.1 ms and 40 KB a turn while it runs.
 */
public final class HoldInference {
    private final HoldModel model;

    /** Infers with this model. */
    public HoldInference(HoldModel model) {
        this.model = model;
    }

    /** Reads a stream. */
    public HoldReading infer(HoldQuestion question) {
        return switch (question.hand()) {
            case LEFT -> weighed(question, one -> infer(one, true));
            case TWO -> weighed(question, one -> infer(one, false));
            case RIGHT -> weighed(question, this::mirrored);
            case UNKNOWN -> guessed(question);
        };
    }

    /** The reading under the likeliest of what the evidence leaves open, made as unsure as that is. */
    private static HoldReading weighed(HoldQuestion question, Function<HoldQuestion, HoldReading> reader) {
        List<HoldReading> readings = question.evidence().assumptions().stream()
                .map(assumed ->
                        reader.apply(new HoldQuestion(question.turns(), question.start(), question.hand(), assumed)))
                .toList();
        if (readings.size() == 1) {
            return readings.get(0);
        }
        double[] logs = readings.stream().mapToDouble(HoldReading::logScore).toArray();
        double logTotal = logSum(logs);
        double[] shares =
                Arrays.stream(logs).map(log -> Math.exp(log - logTotal)).toArray();
        int best = 0;
        for (int reading = 1; reading < shares.length; reading++) {
            best = shares[reading] > shares[best] ? reading : best;
        }
        HoldReading answer = readings.get(best);
        double share = Math.min(1, shares[best]);
        double[] sure = answer.turns().stream()
                .mapToDouble(turn -> share * turn.probability())
                .toArray();
        return Writing.of(
                answer.track(),
                sure,
                LayerOdds.mixed(readings, shares),
                rotated(readings, shares),
                logTotal - Math.log(shares.length));
    }

    private static double logSum(double[] logs) {
        double most = Arrays.stream(logs).max().orElseThrow();
        return most
                + Math.log(Arrays.stream(logs).map(log -> Math.exp(log - most)).sum());
    }

    private static List<Double> rotated(List<HoldReading> readings, double[] shares) {
        Double[] mixed = new Double[readings.get(0).rotated().size()];
        Arrays.setAll(
                mixed,
                turn -> IntStream.range(0, shares.length)
                        .mapToDouble(reading -> shares[reading]
                                * readings.get(reading).rotated().get(turn))
                        .sum());
        return List.of(mixed);
    }

    /** A right hand's turns are a left hand's in the mirror. */
    private HoldReading mirrored(HoldQuestion question) {
        HoldEvidence evidence = question.evidence();
        HoldEvidence seen = new HoldEvidence() {
            @Override
            public double ofHold(int turn, Orientation hold) {
                return evidence.ofHold(turn, Mirror.of(hold));
            }

            @Override
            public double ofRotation(int beforeTurn, Orientation rotation) {
                return evidence.ofRotation(beforeTurn, Mirror.of(rotation));
            }
        };
        HoldReading reading = infer(
                new HoldQuestion(Mirror.of(question.turns()), Mirror.of(question.start()), Hand.LEFT, seen), true);
        double[] sure =
                reading.turns().stream().mapToDouble(HandTurn::probability).toArray();
        return Writing.of(
                Mirror.of(reading.track()), sure, reading.odds().mirrored(), reading.rotated(), reading.logScore());
    }

    /** Reads as either hand and as both would; the reading that is surest of its holds on the mean is the answer. */
    private HoldReading guessed(HoldQuestion question) {
        HoldReading best = infer(by(question, Hand.TWO));
        for (Hand hand : List.of(Hand.LEFT, Hand.RIGHT)) {
            HoldReading other = infer(by(question, hand));
            best = sureness(other) > sureness(best) ? other : best;
        }
        return best;
    }

    private static HoldQuestion by(HoldQuestion question, Hand hand) {
        return new HoldQuestion(question.turns(), question.start(), hand, question.evidence());
    }

    private static double sureness(HoldReading reading) {
        return reading.turns().stream().mapToDouble(HandTurn::probability).sum();
    }

    private HoldReading infer(HoldQuestion question, boolean oneHand) {
        List<Turn> turns = question.turns();
        StreamFacts facts = new StreamFacts(question.start(), turns);
        Features features = new Features(facts, model.book(), "");
        double[] weights = model.weights().of(HoldWeights.Circle.of(oneHand, facts.edgesFirst()));
        Scores scores = scores(question, features, weights);
        Chain chain = new Chain(scores);
        Marginals sharp = new Marginals(features, scores, chain);
        int[] layers = likeliest(following(sharp, turns.size()), sharp.layers());
        int[] holds = BestPath.of(scores.only(seenAt(features, layers)));
        HoldTrack track = new HoldTrack(
                turns, Arrays.stream(holds).mapToObj(Orientation::ofIndex).toList());
        Scores doubting = scores(
                question,
                features,
                Arrays.stream(weights)
                        .map(weight -> weight * model.weights().trust())
                        .toArray());
        Marginals marginals = new Marginals(features, doubting, new Chain(doubting));
        double[][][] following = following(marginals, turns.size());
        double[] sure = new double[turns.size()];
        Arrays.setAll(sure, turn -> Math.min(1, marginals.holdRight(turns, following, layers, turn)));
        return Writing.of(track, sure, new LayerOdds(marginals.layers()), marginals.rotated(), chain.logTotal);
    }

    private static Scores scores(HoldQuestion question, Features features, double[] weights) {
        Scores scores = new Scores(features, weights);
        if (question.evidence() != HoldEvidence.NONE) {
            scores.join(question.evidence());
        }
        return scores;
    }

    private static double[][][] following(Marginals marginals, int turns) {
        double[][][] following = new double[turns][][];
        for (int turn = 1; turn < turns; turn++) {
            following[turn] = marginals.pair(turn - 1, turn);
        }
        return following;
    }

    /** By turn and hold: whether the layer is seen there. */
    static boolean[][] seenAt(Features features, int[] layers) {
        boolean[][] allowed = new boolean[layers.length][Holds.COUNT];
        for (int turn = 0; turn < layers.length; turn++) {
            int[] seen = features.layers(turn);
            for (int hold = 0; hold < Holds.COUNT; hold++) {
                allowed[turn][hold] = seen[hold] == layers[turn];
            }
        }
        return allowed;
    }

    /** The layers whose neighbouring pairs are likeliest on the sum: the reading with most holds right on average. */
    private static int[] likeliest(double[][][] following, double[][] odds) {
        int turns = odds.length;
        double[] best = odds[0].clone();
        int[][] from = new int[turns][6];
        for (int turn = 1; turn < turns; turn++) {
            double[][] pair = following[turn];
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
