package fermata.analysis.hold.lattice;

import fermata.analysis.hold.Holds;
import java.util.Arrays;

/**
 * Forward-backward over the lattice, scaled turn by turn (Rabiner 1989, sections III and V).
 *
 * <p>A state is a hold and its age: how many turns were made in it before, up to three. A turn either keeps the
 * hold, one older, or changes it to a fresh one. Cost: about 700 products a turn each way, linear in turns;
 * memory 96 doubles a turn each way.
 */
final class Chain {
    static final int STATES = Holds.COUNT * Features.AGES;
    private static final int OLDEST = Features.AGES - 1;

    private final Scores scores;
    /** By turn and state: the share of the ways so far; sums to one. */
    final double[][] forward;
    /** By turn and state: the ways on from it, so scaled that products with {@link #forward} sum to one. */
    final double[][] backward;

    private final double[][] hold;
    private final double[] scale;
    final double logTotal;

    Chain(Scores scores) {
        this.scores = scores;
        this.forward = new double[scores.turns][STATES];
        this.backward = new double[scores.turns][STATES];
        this.hold = new double[scores.turns][STATES];
        this.scale = new double[scores.turns];
        double logs = 0;
        for (int turn = 0; turn < scores.turns; turn++) {
            logs += weigh(scores.hold[turn], hold[turn]);
        }
        this.logTotal = logs + runForward();
        runBackward();
    }

    /** Exponentials below the greatest term, which is given back. */
    private static double weigh(double[] logs, double[] weights) {
        double most = Double.NEGATIVE_INFINITY;
        for (double log : logs) {
            most = Math.max(most, log);
        }
        for (int state = 0; state < weights.length; state++) {
            double below = logs[state] - most;
            weights[state] = below < -600 ? 0 : Math.exp(below);
        }
        return most;
    }

    private double runForward() {
        for (int at = OLDEST; at < STATES; at += Features.AGES) {
            // What came before the first turn is unknown, not fresh: rotating then costs nothing.
            forward[0][at] = hold[0][at];
        }
        double logs = rescale(0);
        for (int turn = 1; turn < scores.turns; turn++) {
            double[] now = forward[turn];
            stay(forward[turn - 1], now);
            rotate(leaving(forward[turn - 1]), turn, now);
            for (int state = 0; state < STATES; state++) {
                now[state] *= hold[turn][state];
            }
            logs += rescale(turn);
        }
        return logs;
    }

    private double rescale(int turn) {
        double sum = 0;
        for (double share : forward[turn]) {
            sum += share;
        }
        for (int state = 0; state < STATES; state++) {
            forward[turn][state] /= sum;
        }
        scale[turn] = sum;
        return Math.log(sum);
    }

    private static void stay(double[] before, double[] now) {
        for (int first = 0; first < STATES; first += Features.AGES) {
            now[first + 1] = before[first];
            now[first + 2] = before[first + 1];
            now[first + 3] = before[first + 2] + before[first + 3];
        }
    }

    /** By hold and broad reading: the weight of leaving it now, all ages together. */
    double[] leaving(double[] before) {
        double[] leaving = new double[Holds.COUNT * 3];
        for (int at = 0; at < Holds.COUNT; at++) {
            for (int broad = 0; broad < 3; broad++) {
                double sum = 0;
                for (int age = 0; age < Features.AGES; age++) {
                    sum += before[at * Features.AGES + age] * scores.ageWeights()[age][broad];
                }
                leaving[at * 3 + broad] = sum;
            }
        }
        return leaving;
    }

    /** Whether any way leads out of a hold: most are struck out when the truth is learned from. */
    static boolean leaves(double[] leaving, int from) {
        return leaving[from * 3] + leaving[from * 3 + 1] + leaving[from * 3 + 2] > 0;
    }

    private void rotate(double[] leaving, int turn, double[] now) {
        double[] rotation = scores.rotationWeight(turn);
        byte[] broad = scores.broad[turn];
        for (int from = 0; from < Holds.COUNT; from++) {
            if (!leaves(leaving, from)) {
                continue;
            }
            for (int to = 0; to < Holds.COUNT; to++) {
                int change = from * Holds.COUNT + to;
                now[to * Features.AGES] += leaving[from * 3 + broad[change]] * rotation[change];
            }
        }
    }

    private void runBackward() {
        Arrays.fill(backward[scores.turns - 1], 1);
        double[] next = new double[STATES];
        double[] leave = new double[3];
        for (int turn = scores.turns - 2; turn >= 0; turn--) {
            for (int state = 0; state < STATES; state++) {
                next[state] = ahead(turn + 1, state);
            }
            for (int at = 0; at < Holds.COUNT; at++) {
                if (!reached(turn, at)) {
                    continue;
                }
                arriving(turn + 1, at, next, leave);
                for (int age = 0; age < Features.AGES; age++) {
                    double sum = next[at * Features.AGES + Math.min(OLDEST, age + 1)];
                    for (int broad = 0; broad < 3; broad++) {
                        sum += scores.ageWeights()[age][broad] * leave[broad];
                    }
                    backward[turn][at * Features.AGES + age] = sum;
                }
            }
        }
    }

    private boolean reached(int turn, int at) {
        double sum = 0;
        for (int age = 0; age < Features.AGES; age++) {
            sum += forward[turn][at * Features.AGES + age];
        }
        return sum > 0;
    }

    /** By broad reading: the weight of all ways on after leaving a hold before a turn. */
    private void arriving(int turn, int from, double[] next, double[] leave) {
        double[] rotation = scores.rotationWeight(turn);
        Arrays.fill(leave, 0);
        for (int to = 0; to < Holds.COUNT; to++) {
            int change = from * Holds.COUNT + to;
            leave[scores.broad[turn][change]] += rotation[change] * next[to * Features.AGES];
        }
    }

    /** What a state at a turn adds to the way there: its own weight and all ways on. */
    double ahead(int turn, int state) {
        return hold[turn][state] * backward[turn][state] / scale[turn];
    }

    /** The probability of a state at a turn. */
    double state(int turn, int state) {
        return forward[turn][state] * backward[turn][state];
    }

    /** The probability of a change of hold before a turn, given {@link #leaving} of the turn before. */
    double change(int turn, double[] leaving, int from, int to) {
        int change = from * Holds.COUNT + to;
        return leaving[from * 3 + scores.broad[turn][change]]
                * scores.rotationWeight(turn)[change]
                * ahead(turn, to * Features.AGES);
    }
}
