package fermata.analysis.hold.assessment;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;

/**
 * Readings of several solves held against the truth.
 *
 * @param solves how many
 * @param turns how many in all
 * @param holdShare turns whose hold is right
 * @param layerShare turns whose layer is right
 * @param rotations how the rotations were found
 * @param solvesAllRight solves with every hold right
 * @param logScore mean natural logarithm of the probability given to a turn's true layer
 * @param reliability ten tenths of the stated probability
 * @param calibrationError mean distance between stated and true share over the bins, weighted by turns
 */
public record HoldAssessment(
        int solves,
        int turns,
        Share holdShare,
        Share layerShare,
        RotationScore rotations,
        int solvesAllRight,
        double logScore,
        List<ReliabilityBin> reliability,
        double calibrationError) {
    private static final int RESAMPLES = 2000;
    private static final int BINS = 10;

    public HoldAssessment {
        reliability = List.copyOf(reliability);
    }

    /**
     * Sums up. The intervals are percentile bootstrap ones (Efron and Tibshirani 1993, chapter 13), solves
     * resampled whole. Cost: 2,000 resamples, each linear in solves.
     *
     * @param scores at least one
     * @param seed of the resampling
     */
    public static HoldAssessment of(List<SolveScore> scores, long seed) {
        if (scores.isEmpty()) {
            throw new IllegalArgumentException("no solve to assess");
        }
        int[][] picks = resamples(scores.size(), seed);
        Share hold = share(scores, picks, some -> ratio(some, SolveScore::holdsRight, SolveScore::turns));
        Share layer = share(scores, picks, some -> ratio(some, SolveScore::layersRight, SolveScore::turns));
        Share f1 = share(scores, picks, HoldAssessment::f1);
        int turns = sum(scores, SolveScore::turns);
        List<ReliabilityBin> bins = bins(scores);
        double error = bins.stream()
                .mapToDouble(bin -> Math.abs(bin.stated() * bin.turns() - bin.right()))
                .sum();
        return new HoldAssessment(
                scores.size(),
                turns,
                hold,
                layer,
                new RotationScore(
                        sum(scores, SolveScore::rotationsTrue),
                        sum(scores, SolveScore::rotationsFound),
                        sum(scores, SolveScore::rotationsHit),
                        share(scores, picks, some -> ratio(some, SolveScore::rotationsHit, SolveScore::rotationsFound)),
                        share(scores, picks, some -> ratio(some, SolveScore::rotationsHit, SolveScore::rotationsTrue)),
                        f1),
                (int) scores.stream()
                        .filter(one -> one.holdsRight() == one.turns())
                        .count(),
                scores.stream().mapToDouble(SolveScore::logScore).sum() / turns,
                bins,
                error / turns);
    }

    private static int[][] resamples(int solves, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int[][] picks = new int[RESAMPLES][];
        for (int sample = 0; sample < RESAMPLES; sample++) {
            picks[sample] = random.ints(solves, 0, solves).toArray();
        }
        return picks;
    }

    private static Share share(List<SolveScore> scores, int[][] picks, ToDoubleFunction<List<SolveScore>> of) {
        double[] values = Arrays.stream(picks)
                .mapToDouble(pick -> of.applyAsDouble(
                        Arrays.stream(pick).mapToObj(scores::get).toList()))
                .sorted()
                .toArray();
        int tail = (int) Math.round(RESAMPLES * 0.025);
        return new Share(of.applyAsDouble(scores), values[tail], values[RESAMPLES - 1 - tail]);
    }

    private static double f1(List<SolveScore> some) {
        return RotationScore.f1(
                sum(some, SolveScore::rotationsTrue),
                sum(some, SolveScore::rotationsFound),
                sum(some, SolveScore::rotationsHit));
    }

    private static double ratio(
            List<SolveScore> some, ToIntFunction<SolveScore> part, ToIntFunction<SolveScore> whole) {
        return RotationScore.ratio(sum(some, part), sum(some, whole));
    }

    private static int sum(List<SolveScore> scores, ToIntFunction<SolveScore> of) {
        return scores.stream().mapToInt(of).sum();
    }

    private static List<ReliabilityBin> bins(List<SolveScore> scores) {
        int[] turns = new int[BINS];
        int[] right = new int[BINS];
        double[] stated = new double[BINS];
        for (SolveScore score : scores) {
            for (SolveScore.Stated one : score.holds()) {
                int bin = Math.min(BINS - 1, Math.max(0, (int) (one.probability() * BINS)));
                turns[bin]++;
                right[bin] += one.right() ? 1 : 0;
                stated[bin] += one.probability();
            }
        }
        List<ReliabilityBin> bins = new ArrayList<>();
        for (int bin = 0; bin < BINS; bin++) {
            double mean = turns[bin] == 0 ? 0 : stated[bin] / turns[bin];
            bins.add(new ReliabilityBin((double) bin / BINS, (bin + 1.0) / BINS, turns[bin], right[bin], mean));
        }
        return bins;
    }
}
