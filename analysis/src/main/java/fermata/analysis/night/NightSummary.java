package fermata.analysis.night;

import fermata.analysis.average.Averages;
import fermata.analysis.record.NightRecord;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.Result;
import fermata.analysis.record.SolveRecord;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;

/** Adds up one practice day. Pure; cost linear in the day's turns. */
public final class NightSummary {
    private NightSummary() {}

    /**
     * The day's numbers.
     *
     * @param day the day on which the practice began
     * @param solves its attempts, earliest first
     */
    public static NightRecord of(LocalDate day, List<SolveRecord> solves) {
        List<SolveRecord> counted = solves.stream().filter(NightSummary::counts).toList();
        List<SolveRecord> solved =
                counted.stream().filter(SolveRecord::isSolved).toList();
        long[] times = solved.stream().mapToLong(SolveRecord::timeMicros).toArray();
        List<Result> results = counted.stream().map(NightSummary::result).toList();
        return new NightRecord(
                day,
                solved.size(),
                counted.size() - solved.size(),
                best(times),
                mean(times),
                Averages.runs(results, 5),
                Averages.runs(results, 12),
                spread(times));
    }

    private static boolean counts(SolveRecord solve) {
        boolean ended = solve.attempt().outcome() != Outcome.UNKNOWN_AFTER_GAP;
        return ended && !solve.attempt().setAside() && solve.isTimed();
    }

    private static Result result(SolveRecord solve) {
        return solve.isSolved() ? new Result.Time(solve.timeMicros()) : new Result.Dnf();
    }

    private static Result best(long[] times) {
        return times.length == 0
                ? new Result.TooFew(0, 1)
                : new Result.Time(Arrays.stream(times).min().orElseThrow());
    }

    private static Result mean(long[] times) {
        return times.length == 0 ? new Result.TooFew(0, 1) : new Result.Time(Math.round(exactMean(times)));
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
