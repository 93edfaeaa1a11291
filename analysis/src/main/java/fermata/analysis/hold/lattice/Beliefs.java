package fermata.analysis.hold.lattice;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.sequence.StreamFacts;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Mirror;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What one lattice says of where layers were seen: one hand, one assumption. Places are as the solver sees them, also
 * where the lattice is read in the mirror.
 *
 * <p>Readings are chosen by the weights as learned, probabilities stated by the weights as far as they are trusted. Not
 * thread-safe. Cost: some 0.1 ms and 40 KB a turn.
 */
final class Beliefs {
    private static final int[] AS_SEEN = {0, 1, 2, 3, 4, 5};
    private static final int[] IN_MIRROR = Arrays.stream(Face.values())
            .mapToInt(face -> Mirror.of(face).ordinal())
            .toArray();

    /** Natural logarithm of the weight of all readings. */
    final double logTotal;

    /**
     * Natural logarithm of how likely the evidence is, given the turns. Unlike the totals it can be compared between
     * beliefs of other weights.
     */
    final double told;

    private final int[] place;
    private final Features features;
    private final Scores scores;
    private final double[][][] following;
    private final double[][] layers;
    private final Marginals doubting;
    private final double[][] doubtingLayers;
    private final double[][][] doubtingFollowing;

    /**
     * By each way to read a hand, under each assumption that the evidence leaves open. A right hand's turns are a left
     * hand's in the mirror.
     */
    static List<Beliefs> of(HoldModel model, HoldQuestion question, Hand hand) {
        boolean mirrored = hand == Hand.RIGHT;
        List<Turn> turns = mirrored ? Mirror.of(question.turns()) : question.turns();
        StreamFacts facts = new StreamFacts(mirrored ? Mirror.of(question.start()) : question.start(), turns);
        Features features = new Features(facts, model.book(), question.evidence());
        List<Beliefs> beliefs = new ArrayList<>();
        for (List<HoldWeights.Circle> way : HoldWeights.Circle.ways(hand != Hand.TWO, facts.edgesFirst())) {
            for (HoldEvidence assumed : question.evidence().assumptions()) {
                beliefs.add(
                        new Beliefs(features, model.weights(), way, mirrored ? mirrored(assumed) : assumed, mirrored));
            }
        }
        return beliefs;
    }

    private Beliefs(
            Features features,
            HoldWeights model,
            List<HoldWeights.Circle> way,
            HoldEvidence evidence,
            boolean mirrored) {
        this.place = mirrored ? IN_MIRROR : AS_SEEN;
        this.features = features;
        double[] weights = model.of(way);
        this.scores = scores(features, evidence, weights);
        Chain chain = new Chain(scores);
        this.logTotal = chain.logTotal;
        this.told = evidence == HoldEvidence.NONE ? 0 : logTotal - new Chain(new Scores(features, weights)).logTotal;
        Marginals sharp = new Marginals(features, scores, chain);
        this.following = following(sharp);
        this.layers = sharp.layers();
        Scores softer = scores(
                features,
                evidence,
                Arrays.stream(weights).map(weight -> weight * model.trust()).toArray());
        this.doubting = new Marginals(features, softer, new Chain(softer));
        this.doubtingLayers = doubting.layers();
        this.doubtingFollowing = following(doubting);
    }

    private static Scores scores(Features features, HoldEvidence evidence, double[] weights) {
        Scores scores = new Scores(features, weights);
        if (evidence != HoldEvidence.NONE) {
            scores.join(evidence);
        }
        return scores;
    }

    private static HoldEvidence mirrored(HoldEvidence evidence) {
        return evidence == HoldEvidence.NONE
                ? evidence
                : new HoldEvidence() {
                    @Override
                    public double ofHold(int turn, Orientation hold) {
                        return evidence.ofHold(turn, Mirror.of(hold));
                    }

                    @Override
                    public double ofRotation(int beforeTurn, Orientation rotation) {
                        return evidence.ofRotation(beforeTurn, Mirror.of(rotation));
                    }
                };
    }

    private double[][][] following(Marginals marginals) {
        double[][][] pairs = new double[features.size()][][];
        for (int turn = 1; turn < pairs.length; turn++) {
            pairs[turn] = marginals.pair(turn - 1, turn);
        }
        return pairs;
    }

    /** How likely the first turn's layer was seen there, for choosing a reading. */
    double first(int layer) {
        return layers[0][place[layer]];
    }

    /** How likely a turn's layer was seen there and the one before it there, for choosing a reading. */
    double pair(int turn, int before, int layer) {
        return following[turn][place[before]][place[layer]];
    }

    /** How likely a turn's layer was seen there, as far as the weights are trusted. */
    double stated(int turn, int layer) {
        return doubtingLayers[turn][place[layer]];
    }

    /** How likely a turn's hold is right in a reading with these layers, likewise. */
    double holdRight(int[] seen, int turn) {
        return doubting.holdRight(features.facts.turns, doubtingFollowing, placed(seen), turn);
    }

    /** By turn: how likely the cube was turned as a whole before it. */
    List<Double> rotated() {
        return doubting.rotated();
    }

    /** The likeliest holds with these layers. */
    HoldTrack track(int[] seen) {
        List<Turn> turns = features.facts.turns;
        int[] holds = BestPath.of(scores.only(HoldInference.seenAt(features, placed(seen))));
        HoldTrack track = new HoldTrack(
                turns, Arrays.stream(holds).mapToObj(Orientation::ofIndex).toList());
        return place == IN_MIRROR ? track.mirrored() : track;
    }

    private int[] placed(int[] seen) {
        return Arrays.stream(seen).map(layer -> place[layer]).toArray();
    }
}
