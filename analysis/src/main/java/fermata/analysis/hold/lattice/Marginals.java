package fermata.analysis.hold.lattice;

import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.Holds;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;

/** Probabilities of layers, alone and in pairs, summed over all paths. Cost: about 10,000 multiplications a turn. */
final class Marginals {
    private final Features features;
    private final Scores scores;
    private final Chain chain;

    Marginals(Features features, Scores scores, Chain chain) {
        this.features = features;
        this.scores = scores;
        this.chain = chain;
    }

    /** By turn and face: where its layer was seen. */
    double[][] layers() {
        double[][] layers = new double[scores.turns][6];
        for (int turn = 0; turn < scores.turns; turn++) {
            for (int state = 0; state < Chain.STATES; state++) {
                layers[turn][Holds.faceOf(features.seen(turn, state / Features.AGES))] += chain.state(turn, state);
            }
        }
        return layers;
    }

    /** By turn: how likely the hold changed before it other than by a wide turn or a slice. */
    List<Double> rotated() {
        List<Double> rotated = new ArrayList<>(List.of(0.0));
        for (int turn = 1; turn < scores.turns; turn++) {
            double[] leaving = chain.leaving(chain.forward[turn - 1]);
            double sum = 0;
            for (int from = 0; from < Holds.COUNT; from++) {
                for (int to = 0; to < Holds.COUNT; to++) {
                    boolean isTurn = scores.broad[turn][from * Holds.COUNT + to] == 0;
                    sum += from == to || isTurn ? 0 : chain.change(turn, leaving, from, to);
                }
            }
            rotated.add(Math.min(1, sum));
        }
        return rotated;
    }

    /** By face and face: where a turn's layer and a later turn's were seen. */
    double[][] pair(int turn, int later) {
        double[][] tagged = new double[6][Chain.STATES];
        for (int state = 0; state < Chain.STATES; state++) {
            int layer = Holds.faceOf(features.seen(turn, state / Features.AGES));
            tagged[layer][state] = chain.state(turn, state);
        }
        for (int next = turn + 1; next <= later; next++) {
            tagged = carry(tagged, next);
        }
        double[][] pair = new double[6][6];
        for (int tag = 0; tag < 6; tag++) {
            for (int state = 0; state < Chain.STATES; state++) {
                pair[tag][Holds.faceOf(features.seen(later, state / Features.AGES))] += tagged[tag][state];
            }
        }
        return pair;
    }

    /** Carries probabilities, each with its tag, over one more turn. */
    private double[][] carry(double[][] tagged, int next) {
        double[] ahead = new double[Chain.STATES];
        for (int state = 0; state < Chain.STATES; state++) {
            ahead[state] = chain.ahead(next, state);
        }
        double[][] carried = new double[6][Chain.STATES];
        for (int state = 0; state < Chain.STATES; state++) {
            carryState(tagged, next, state, ahead, carried);
        }
        return carried;
    }

    private void carryState(double[][] tagged, int next, int state, double[] ahead, double[][] carried) {
        double all = 0;
        for (int tag = 0; tag < 6; tag++) {
            all += tagged[tag][state];
        }
        if (all < 1e-7) {
            return;
        }
        for (int tag = 0; tag < 6; tag++) {
            // Over a first turn, the usual case, all of a state has one tag.
            if (tagged[tag][state] > 0) {
                carryState(tagged[tag][state], next, state, ahead, carried[tag]);
            }
        }
    }

    private void carryState(double weight, int next, int state, double[] ahead, double[] carried) {
        int from = state / Features.AGES;
        int age = state % Features.AGES;
        double here = chain.backward[next - 1][state];
        int older = from * Features.AGES + Math.min(Features.AGES - 1, age + 1);
        carried[older] += weight * (ahead[older] / here);
        double[] rotationWeight = scores.rotationWeight(next);
        double[] ageWeight = scores.ageWeights()[age];
        byte[] broad = scores.broad[next];
        for (int to = 0; to < Holds.COUNT; to++) {
            int change = from * Holds.COUNT + to;
            double share = rotationWeight[change] * ageWeight[broad[change]] * ahead[to * Features.AGES] / here;
            if (share > 1e-8) {
                carried[to * Features.AGES] += weight * share;
            }
        }
    }

    /**
     * The probability that a turn's layer and its partner's were seen where these say.
     *
     * @param following by turn, {@link #pair} of it and the turn before
     */
    double holdRight(List<Turn> turns, double[][][] following, int[] layers, int turn) {
        int partner = HoldTrack.partner(turns, turn);
        int first = Math.min(turn, partner);
        int last = Math.max(turn, partner);
        double[][] pair = last == first + 1 ? following[last] : pair(first, last);
        return pair[layers[first]][layers[last]];
    }
}
