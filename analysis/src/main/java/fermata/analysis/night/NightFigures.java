package fermata.analysis.night;

import fermata.analysis.record.Result;
import fermata.analysis.record.RunOfResults;
import java.util.List;
import java.util.Objects;

/**
 * The times of one practice day, or of many.
 *
 * @param solves solved attempts
 * @param abandoned abandoned attempts
 * @param best the least turn time
 * @param mean the plain mean of the solved attempts' turn times, as WCA 9f1 writes them down
 * @param spread standard deviation (n - 1) of the same
 * @param average5 as WCA 9f8 has it: best and worst left out, an abandoned attempt is the worst
 * @param trimmed12 the same over twelve
 */
public record NightFigures(
        int solves,
        int abandoned,
        Result best,
        Result mean,
        Result spread,
        RunOfResults average5,
        RunOfResults trimmed12) {
    public NightFigures {
        Objects.requireNonNull(best, "best");
        Objects.requireNonNull(mean, "mean");
        Objects.requireNonNull(spread, "spread");
        Objects.requireNonNull(average5, "average5");
        Objects.requireNonNull(trimmed12, "trimmed12");
    }

    /**
     * The figures of attempts in the order in which they were made. Cost: a sort of twelve for each.
     *
     * @param results none may be {@link Result.TooFew}
     */
    public static NightFigures of(List<Result> results) {
        long[] times = results.stream()
                .filter(Result.Time.class::isInstance)
                .mapToLong(result -> ((Result.Time) result).micros())
                .toArray();
        return new NightFigures(
                times.length,
                results.size() - times.length,
                best(times),
                mean(results),
                spread(times),
                Averages.runs(results, 5),
                Averages.runs(results, 12));
    }

    private static Result best(long[] times) {
        long best = Long.MAX_VALUE;
        for (long time : times) {
            best = Math.min(best, time);
        }
        return times.length == 0 ? new Result.TooFew(0, 1) : new Result.Time(best);
    }

    /** Of results as they are written down (9f1), so that the mean of one solve is its time. */
    private static Result mean(List<Result> results) {
        return Averages.mean(
                results.stream().filter(Result.Time.class::isInstance).toList());
    }

    private static Result spread(long[] times) {
        if (times.length < 2) {
            return new Result.TooFew(times.length, 2);
        }
        double mean = exactMean(times);
        double squares = 0;
        for (long time : times) {
            squares += (time - mean) * (time - mean);
        }
        return new Result.Time(Math.round(Math.sqrt(squares / (times.length - 1))));
    }

    private static double exactMean(long[] times) {
        double sum = 0;
        for (long time : times) {
            sum += time;
        }
        return sum / times.length;
    }
}
