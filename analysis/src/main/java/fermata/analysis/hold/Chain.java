package fermata.analysis.hold;

import java.util.Arrays;

/**
 * Forward-backward and Viterbi over the lattice, in the log domain (Rabiner 1989, section III).
 *
 * <p>A state is a hold and its age: how many turns were made in it before, up to three. A turn either keeps the
 * hold, one older, or changes it to a fresh one. Cost: about 900 exponentials a turn each way, linear in turns;
 * memory 96 doubles a turn each way.
 */
final class Chain {
    static final int STATES = Holds.COUNT * Features.AGES;
    private static final int OLDEST = Features.AGES - 1;
    private static final double NEVER = Double.NEGATIVE_INFINITY;

    private final Scores scores;
    final double[][] forward;
    final double[][] backward;
    final double logTotal;

    Chain(Scores scores) {
        this.scores = scores;
        this.forward = new double[scores.turns][STATES];
        this.backward = new double[scores.turns][STATES];
        runForward();
        runBackward();
        this.logTotal = logSum(forward[scores.turns - 1], 0, STATES);
    }

    private void runForward() {
        Arrays.fill(forward[0], NEVER);
        for (int hold = 0; hold < Holds.COUNT; hold++) {
            // What came before the first turn is unknown, not fresh: rotating then costs nothing.
            forward[0][hold * Features.AGES + OLDEST] = scores.hold[0][hold * Features.AGES + OLDEST];
        }
        for (int turn = 1; turn < scores.turns; turn++) {
            double[] now = forward[turn];
            stay(forward[turn - 1], now);
            rotate(leaving(forward[turn - 1]), turn, now);
            for (int state = 0; state < STATES; state++) {
                now[state] += scores.hold[turn][state];
            }
        }
    }

    private static void stay(double[] before, double[] now) {
        for (int first = 0; first < STATES; first += Features.AGES) {
            now[first + 1] = before[first];
            now[first + 2] = before[first + 1];
            now[first + 3] = logAdd(before[first + 2], before[first + 3]);
        }
    }

    /** By hold and broad reading: the weight of leaving it now, all ages together. */
    double[] leaving(double[] before) {
        double[] leaving = new double[Holds.COUNT * 3];
        double[] terms = new double[Features.AGES];
        for (int hold = 0; hold < Holds.COUNT; hold++) {
            for (int broad = 0; broad < 3; broad++) {
                for (int age = 0; age < Features.AGES; age++) {
                    terms[age] = before[hold * Features.AGES + age] + scores.age[age][broad];
                }
                leaving[hold * 3 + broad] = logSum(terms, 0, Features.AGES);
            }
        }
        return leaving;
    }

    private void rotate(double[] leaving, int turn, double[] now) {
        double[] terms = new double[Holds.COUNT];
        for (int to = 0; to < Holds.COUNT; to++) {
            if (scores.hold[turn][to * Features.AGES] == NEVER) {
                now[to * Features.AGES] = NEVER;
                continue;
            }
            for (int from = 0; from < Holds.COUNT; from++) {
                int change = from * Holds.COUNT + to;
                terms[from] = leaving[from * 3 + scores.broad[turn][change]] + scores.rotation[turn][change];
            }
            now[to * Features.AGES] = logSum(terms, 0, Holds.COUNT);
        }
    }

    private void runBackward() {
        for (int turn = scores.turns - 2; turn >= 0; turn--) {
            double[] next = new double[STATES];
            for (int state = 0; state < STATES; state++) {
                next[state] = backward[turn + 1][state] + scores.hold[turn + 1][state];
            }
            for (int hold = 0; hold < Holds.COUNT; hold++) {
                double[] leave = arriving(turn + 1, hold, next);
                for (int age = 0; age < Features.AGES; age++) {
                    double sum = next[hold * Features.AGES + Math.min(OLDEST, age + 1)];
                    for (int broad = 0; broad < 3; broad++) {
                        sum = logAdd(sum, scores.age[age][broad] + leave[broad]);
                    }
                    backward[turn][hold * Features.AGES + age] = sum;
                }
            }
        }
    }

    /** By broad reading: the weight of all ways on after leaving a hold before a turn. */
    private double[] arriving(int turn, int from, double[] next) {
        double[][] terms = new double[3][Holds.COUNT];
        int[] counts = new int[3];
        for (int to = 0; to < Holds.COUNT; to++) {
            int change = from * Holds.COUNT + to;
            double term = scores.rotation[turn][change] + next[to * Features.AGES];
            if (term != NEVER) {
                int broad = scores.broad[turn][change];
                terms[broad][counts[broad]++] = term;
            }
        }
        double[] sums = new double[3];
        for (int broad = 0; broad < 3; broad++) {
            sums[broad] = logSum(terms[broad], 0, counts[broad]);
        }
        return sums;
    }

    /** The probability of a state at a turn. */
    double state(int turn, int state) {
        return Math.exp(forward[turn][state] + backward[turn][state] - logTotal);
    }

    /** The probability of a change of hold before a turn, given {@link #leaving} of the turn before. */
    double change(int turn, double[] leaving, int from, int to) {
        int change = from * Holds.COUNT + to;
        int fresh = to * Features.AGES;
        double log = leaving[from * 3 + scores.broad[turn][change]]
                + scores.rotation[turn][change]
                + scores.hold[turn][fresh]
                + backward[turn][fresh]
                - logTotal;
        return log < -40 ? 0 : Math.exp(log);
    }

    /** ln(e^a + e^b). */
    static double logAdd(double a, double b) {
        double most = Math.max(a, b);
        return most == NEVER ? NEVER : most + Math.log1p(Math.exp(Math.min(a, b) - most));
    }

    /** The logarithm of a sum of exponentials; terms 40 below the greatest do not change a double that matters. */
    static double logSum(double[] terms, int from, int to) {
        double most = NEVER;
        for (int term = from; term < to; term++) {
            most = Math.max(most, terms[term]);
        }
        if (most == NEVER) {
            return NEVER;
        }
        double sum = 0;
        for (int term = from; term < to; term++) {
            double below = terms[term] - most;
            sum += below < -40 ? 0 : Math.exp(below);
        }
        return most + Math.log(sum);
    }
}
