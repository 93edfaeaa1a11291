package fermata.analysis.hold.lattice;

import fermata.analysis.hold.Holds;
import java.util.Arrays;

/** The best single path through the lattice (Viterbi 1967), as one hold a turn. Cost: 24 x 24 x 3 sums a turn. */
final class BestPath {
    private static final int OLDEST = Features.AGES - 1;

    private final Scores scores;
    private final int[][] cameFrom;

    private BestPath(Scores scores) {
        this.scores = scores;
        this.cameFrom = new int[scores.turns][Chain.STATES];
    }

    static int[] of(Scores scores) {
        return new BestPath(scores).run();
    }

    private int[] run() {
        double[] best = new double[Chain.STATES];
        Arrays.fill(best, Double.NEGATIVE_INFINITY);
        for (int hold = 0; hold < Holds.COUNT; hold++) {
            int state = hold * Features.AGES + OLDEST;
            best[state] = scores.hold[0][state];
        }
        for (int turn = 1; turn < scores.turns; turn++) {
            best = step(best, turn);
        }
        int state = 0;
        for (int other = 1; other < Chain.STATES; other++) {
            state = best[other] > best[state] ? other : state;
        }
        int[] holds = new int[scores.turns];
        for (int turn = scores.turns - 1; turn >= 0; turn--) {
            holds[turn] = state / Features.AGES;
            state = cameFrom[turn][state];
        }
        return holds;
    }

    private double[] step(double[] before, int turn) {
        double[] now = new double[Chain.STATES];
        Arrays.fill(now, Double.NEGATIVE_INFINITY);
        for (int from = 0; from < Chain.STATES; from++) {
            if (before[from] == Double.NEGATIVE_INFINITY) {
                continue;
            }
            int hold = from / Features.AGES;
            int age = from % Features.AGES;
            offer(now, turn, from, hold * Features.AGES + Math.min(OLDEST, age + 1), before[from]);
            for (int to = 0; to < Holds.COUNT; to++) {
                int change = hold * Holds.COUNT + to;
                double score =
                        before[from] + scores.rotation[turn][change] + scores.age[age][scores.broad[turn][change]];
                offer(now, turn, from, to * Features.AGES, score);
            }
        }
        return now;
    }

    private void offer(double[] now, int turn, int from, int to, double before) {
        double score = before + scores.hold[turn][to];
        if (score > now[to]) {
            now[to] = score;
            cameFrom[turn][to] = from;
        }
    }
}
