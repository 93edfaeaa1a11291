package fermata.analysis.statistics;

import java.util.Arrays;
import java.util.Objects;

/**
 * Two kinds of interval in one: fluent ones and held-up ones, each log-normal. What the model of rests is held against:
 * it knows nothing of contexts and places.
 *
 * <p>Source of the model: Roeser, De Maeyer, Leijten, Van Waes (2021), doi 10.1007/s11145-021-10203-z, who fit pauses
 * in typing so and argue against fixed thresholds. Fitted by expectation-maximisation (Dempster, Laird, Rubin 1977).
 *
 * @param slowWeight the share of held-up intervals, strictly between 0 and 1
 * @param fluent the faster kind
 * @param slow the slower kind: its {@code mu} is not below the fluent one's
 */
public record LogNormalMixture(double slowWeight, LogNormal fluent, LogNormal slow) {
    /** Fewer give five parameters nothing to stand on. */
    public static final int FEWEST_TIMES = 20;

    private static final int MOST_STEPS = 20_000;
    private static final double SMALLEST_GAIN = 1e-12;
    /** A component may not shrink onto one value (a batching radio repeats itself), where likelihood has no bound. */
    private static final double SMALLEST_SIGMA = 0.02;

    public LogNormalMixture {
        Objects.requireNonNull(fluent, "fluent");
        Objects.requireNonNull(slow, "slow");
        if (!(slowWeight > 0 && slowWeight < 1)) {
            throw new IllegalArgumentException("slowWeight " + slowWeight + " is not strictly between 0 and 1");
        }
        if (slow.mu() < fluent.mu()) {
            throw new IllegalArgumentException("slow mu " + slow.mu() + " is below fluent mu " + fluent.mu());
        }
    }

    /**
     * The maximum-likelihood fit. Deterministic; begins with the slowest quarter as the slow kind. Cost: some hundred
     * passes over the times, two exponentials a time and pass.
     *
     * @param times positive times in any one unit, at least {@link #FEWEST_TIMES}
     */
    public static LogNormalMixture fit(double[] times) {
        if (times.length < FEWEST_TIMES) {
            throw new IllegalArgumentException(
                    times.length + " times are too few to tell two kinds apart; at least " + FEWEST_TIMES + " needed");
        }
        double[] logs = new double[times.length];
        for (int index = 0; index < times.length; index++) {
            if (!(times[index] > 0)) {
                throw new IllegalArgumentException("time " + times[index] + " at " + index + " is not positive");
            }
            logs[index] = Math.log(times[index]);
        }
        LogNormalMixture mixture = begin(logs);
        double likelihood = mixture.logLikelihoodOfLogs(logs);
        for (int step = 0; step < MOST_STEPS; step++) {
            mixture = mixture.improved(logs);
            double next = mixture.logLikelihoodOfLogs(logs);
            if (next - likelihood < SMALLEST_GAIN * Math.abs(next) && step > 10) {
                break;
            }
            likelihood = next;
        }
        return mixture;
    }

    private static LogNormalMixture begin(double[] logs) {
        double[] sorted = logs.clone();
        Arrays.sort(sorted);
        int cut = sorted.length * 3 / 4;
        return of(
                0.25,
                moments(Arrays.copyOfRange(sorted, 0, cut)),
                moments(Arrays.copyOfRange(sorted, cut, sorted.length)));
    }

    private static LogNormal moments(double[] logs) {
        double mean = Arrays.stream(logs).average().orElseThrow();
        double square =
                Arrays.stream(logs).map(log -> (log - mean) * (log - mean)).sum() / logs.length;
        return new LogNormal(mean, Math.max(SMALLEST_SIGMA, Math.sqrt(square)));
    }

    private static LogNormalMixture of(double secondWeight, LogNormal first, LogNormal second) {
        double weight = Math.min(1 - 1e-9, Math.max(1e-9, secondWeight));
        return first.mu() <= second.mu()
                ? new LogNormalMixture(weight, first, second)
                : new LogNormalMixture(1 - weight, second, first);
    }

    private LogNormalMixture improved(double[] logs) {
        double total = 0;
        double slowSum = 0;
        double fluentSum = 0;
        double[] shares = new double[logs.length];
        for (int index = 0; index < logs.length; index++) {
            shares[index] = slowProbabilityOfLog(logs[index]);
            total += shares[index];
            slowSum += shares[index] * logs[index];
            fluentSum += (1 - shares[index]) * logs[index];
        }
        double slowMu = slowSum / total;
        double fluentMu = fluentSum / (logs.length - total);
        double slowSquares = 0;
        double fluentSquares = 0;
        for (int index = 0; index < logs.length; index++) {
            slowSquares += shares[index] * (logs[index] - slowMu) * (logs[index] - slowMu);
            fluentSquares += (1 - shares[index]) * (logs[index] - fluentMu) * (logs[index] - fluentMu);
        }
        return of(
                total / logs.length,
                new LogNormal(fluentMu, Math.max(SMALLEST_SIGMA, Math.sqrt(fluentSquares / (logs.length - total)))),
                new LogNormal(slowMu, Math.max(SMALLEST_SIGMA, Math.sqrt(slowSquares / total))));
    }

    /**
     * The probability that a time is a held-up one. Below the fluent median it is that of the median itself at most:
     * a wide slow component must not claim the very fastest turns.
     */
    public double slowProbability(double time) {
        double atLeastMedian = Math.max(Math.log(time), fluent.mu());
        return slowProbabilityOfLog(atLeastMedian);
    }

    private double slowProbabilityOfLog(double log) {
        double difference = Math.log(slowWeight)
                + slow.logDensityOfLog(log)
                - Math.log(1 - slowWeight)
                - fluent.logDensityOfLog(log);
        return 1 / (1 + Math.exp(-difference));
    }

    /** The log likelihood of these times, on the scale of their logarithms. */
    public double logLikelihood(double[] times) {
        return logLikelihoodOfLogs(Arrays.stream(times).map(Math::log).toArray());
    }

    private double logLikelihoodOfLogs(double[] logs) {
        double sum = 0;
        for (double log : logs) {
            double first = Math.log(1 - slowWeight) + fluent.logDensityOfLog(log);
            double second = Math.log(slowWeight) + slow.logDensityOfLog(log);
            double larger = Math.max(first, second);
            sum += larger + Math.log(Math.exp(first - larger) + Math.exp(second - larger));
        }
        return sum;
    }
}
