package fermata.analysis.night;

import fermata.analysis.record.Result;
import fermata.analysis.record.RunOfResults;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalLong;

/**
 * Averages over results. A result counts as it would be written down: under ten minutes cut off to hundredths of a
 * second (9f1), over ten minutes rounded to seconds (9f2); the average is rounded to nearest by the same unit. Pure.
 */
public final class Averages {
    private static final long HUNDREDTH_MICROS = 10_000;
    private static final long SECOND_MICROS = 1_000_000;
    private static final long TEN_MINUTES_MICROS = 600 * SECOND_MICROS;

    private Averages() {}

    /**
     * The best and the worst left out, the mean of the others (9f8 for five). One unfinished attempt is the worst;
     * two or more make the average unfinished (9f9).
     *
     * @param results three or more; none may be {@link Result.TooFew}
     */
    public static Result trimmed(List<Result> results) {
        if (results.size() < 3) {
            return new Result.TooFew(results.size(), 3);
        }
        List<Long> times = times(results);
        if (results.size() - times.size() > 1) {
            return new Result.Dnf();
        }
        times.sort(Comparator.naturalOrder());
        boolean worstIsUnfinished = times.size() < results.size();
        return rounded(times.subList(1, worstIsUnfinished ? times.size() : times.size() - 1));
    }

    /** The plain mean (9f10); one unfinished attempt makes it unfinished (9f11). */
    public static Result mean(List<Result> results) {
        if (results.isEmpty()) {
            return new Result.TooFew(0, 1);
        }
        List<Long> times = times(results);
        return times.size() < results.size() ? new Result.Dnf() : rounded(times);
    }

    /** {@link #trimmed} over every run of {@code length} consecutive results. Cost: length log length each. */
    public static RunOfResults runs(List<Result> results, int length) {
        if (results.size() < length) {
            Result tooFew = new Result.TooFew(results.size(), length);
            return new RunOfResults(tooFew, tooFew);
        }
        Result best = new Result.Dnf();
        Result latest = best;
        for (int from = 0; from + length <= results.size(); from++) {
            latest = trimmed(results.subList(from, from + length));
            best = isBetter(latest, best) ? latest : best;
        }
        return new RunOfResults(latest, best);
    }

    private static boolean isBetter(Result one, Result other) {
        return one instanceof Result.Time time
                && (!(other instanceof Result.Time best) || time.micros() < best.micros());
    }

    private static List<Long> times(List<Result> results) {
        List<Long> times = new ArrayList<>();
        for (Result result : results) {
            OptionalLong micros =
                    result.fold(time -> OptionalLong.of(written(time.micros())), dnf -> OptionalLong.empty(), few -> {
                        throw new IllegalArgumentException("an average takes times and DNFs, not " + few);
                    });
            micros.ifPresent(times::add);
        }
        return times;
    }

    /** A time as it is written down (9f1, 9f2), in microseconds. */
    public static long written(long micros) {
        return micros >= TEN_MINUTES_MICROS
                ? nearest(micros, 1, SECOND_MICROS)
                : micros / HUNDREDTH_MICROS * HUNDREDTH_MICROS;
    }

    private static Result rounded(List<Long> times) {
        long sum = times.stream().mapToLong(Long::longValue).sum();
        boolean long10 = sum >= TEN_MINUTES_MICROS * times.size();
        return new Result.Time(nearest(sum, times.size(), long10 ? SECOND_MICROS : HUNDREDTH_MICROS));
    }

    /** {@code sum / count} to the nearest unit, a half up, without leaving whole numbers. */
    private static long nearest(long sum, int count, long unit) {
        return Math.floorDiv(2 * sum + unit * count, 2 * unit * count) * unit;
    }
}
