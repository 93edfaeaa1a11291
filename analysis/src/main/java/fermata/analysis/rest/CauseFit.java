package fermata.analysis.rest;

import fermata.analysis.statistics.LogNormal;
import java.util.Arrays;
import java.util.List;

/**
 * Learns how long causes last and how often they take part, from the rests of a night.
 *
 * <p>Expectation-maximisation over the sets of {@link CauseSharing}; yesterday's values count as so many further rests.
 * Cost: at most {@value #STEPS} passes over the likely rests, 2^n sets each.
 */
final class CauseFit {
    private static final int STEPS = 25;
    private static final double SMALLEST_CHANGE = 2e-3;
    private static final double FEWEST_PROBABILITY = 0.02;
    private static final double YESTERDAYS_RESTS = 12;
    private static final double SMALLEST_SPREAD = 0.15;
    private static final double SHORTEST_MICROS = 20_000;

    private final CauseSnapshot yesterday;
    private final List<Suspected> rests;

    private CauseFit(List<Suspected> rests, CauseSnapshot yesterday) {
        this.rests = rests.stream()
                .filter(rest -> rest.reading().restProbability() >= FEWEST_PROBABILITY
                        && rest.reading().excessMicros() >= SHORTEST_MICROS)
                .toList();
        this.yesterday = yesterday;
    }

    static CauseSnapshot learn(List<Suspected> rests, CauseSnapshot yesterday) {
        CauseFit fit = new CauseFit(rests, yesterday);
        CauseSnapshot tonight = yesterday;
        for (int step = 0; step < STEPS; step++) {
            CauseSnapshot next = fit.improve(tonight);
            boolean isSettled = largestChange(tonight, next) < SMALLEST_CHANGE;
            tonight = next;
            if (isSettled) {
                break;
            }
        }
        return tonight;
    }

    private static double largestChange(CauseSnapshot one, CauseSnapshot other) {
        double largest = 0;
        for (Cause cause : Cause.values()) {
            largest = Math.max(
                    largest,
                    Math.abs(one.length(cause).mu() - other.length(cause).mu()));
        }
        return largest;
    }

    private CauseSnapshot improve(CauseSnapshot now) {
        int causes = Cause.values().length;
        double[] counts = new double[causes];
        double[] sums = new double[causes];
        double[] squares = new double[causes];
        double[] possible = new double[Circumstance.values().length];
        double[] present = new double[possible.length];
        for (Suspected rest : rests) {
            CauseSharing sharing = rest.sharing(now);
            double[] probabilities = sharing.probabilities();
            double[] expectations = sharing.expectations();
            double[] squared = sharing.squares();
            for (int which = 0; which < probabilities.length; which++) {
                Suspicion suspicion = rest.suspicions().get(which);
                double isRest = rest.reading().restProbability();
                int circumstance = suspicion.circumstance().ordinal();
                possible[circumstance] += isRest * suspicion.reading();
                present[circumstance] += isRest * probabilities[which];
                int cause = suspicion.circumstance().cause().ordinal();
                counts[cause] += isRest * probabilities[which];
                sums[cause] += isRest * expectations[which];
                squares[cause] += isRest * squared[which];
            }
        }
        return new CauseSnapshot(lengths(counts, sums, squares), presences(possible, present));
    }

    private List<LogNormal> lengths(double[] counts, double[] sums, double[] squares) {
        LogNormal[] lengths = new LogNormal[counts.length];
        for (int cause = 0; cause < lengths.length; cause++) {
            LogNormal before = yesterday.lengths().get(cause);
            double mean = before.mean();
            double square = mean * mean * Math.exp(before.sigma() * before.sigma());
            double count = counts[cause] + YESTERDAYS_RESTS;
            double tonight = (sums[cause] + YESTERDAYS_RESTS * mean) / count;
            double excessSquare = (squares[cause] + YESTERDAYS_RESTS * square) / count / (tonight * tonight);
            double sigma = Math.max(SMALLEST_SPREAD, Math.sqrt(Math.log(Math.max(1, excessSquare))));
            lengths[cause] = new LogNormal(Math.log(tonight) - sigma * sigma / 2, sigma);
        }
        return List.of(lengths);
    }

    private List<Double> presences(double[] possible, double[] present) {
        Double[] presences = new Double[possible.length];
        Arrays.setAll(presences, which -> {
            double share =
                    (present[which] + YESTERDAYS_RESTS * yesterday.presences().get(which))
                            / (possible[which] + YESTERDAYS_RESTS);
            boolean isLearned = Circumstance.values()[which].isLearned();
            return isLearned
                    ? Math.min(0.995, Math.max(0.005, share))
                    : yesterday.presences().get(which);
        });
        return List.of(presences);
    }
}
