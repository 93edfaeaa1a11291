package fermata.analysis.calibration;

import fermata.analysis.event.OwnTimes;
import fermata.analysis.statistics.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * One solver's times for each kind of transition, and how well an interval alone tells it from a turn that just
 * follows.
 *
 * @param times one for each {@link TransitionKind}, in their order
 */
public record Calibration(List<Times> times) {
    /** Fewer intervals say nothing about their own spread. */
    public static final int FEWEST = 5;

    private static final double Z = 1.959964;
    /** The prior is as sure as one who has seen solvers differ by a factor of about 1.6 either way. */
    private static final double PRIOR_LOG_DEVIATION = 0.5;
    /** Makes a median absolute deviation comparable to a normal standard deviation. */
    private static final double NORMAL = 1.4826;
    /** The standard error of a median against that of a mean, for normal values: the root of pi / 2. */
    private static final double MEDIAN_COST = Math.sqrt(Math.PI / 2);
    /** An interval of 0 is two turns in one tick of the device; a log needs something. */
    private static final long TICK_MICROS = 1_000;

    /**
     * The times of one kind.
     *
     * @param kind which
     * @param count intervals
     * @param medianMicros estimated median, shrunk to the prior's
     * @param medianInterval its 95 % interval
     * @param separation how likely an interval of this kind is longer than a fluent one (area under the curve, 0.5
     *     tells nothing, 1 tells all); 0.5 for the fluent ones themselves
     * @param separationInterval its 95 % interval; 0..1 with fewer than {@link #FEWEST} of either
     */
    public record Times(
            TransitionKind kind,
            int count,
            double medianMicros,
            Interval medianInterval,
            double separation,
            Interval separationInterval) {}

    public Calibration {
        times = List.copyOf(times);
    }

    /** Learns from exercises that were done. */
    public static Calibration learn(List<CalibrationDrill.Done> done) {
        double[] fluent = logs(done, TransitionKind.FLUENT);
        List<Times> times = new ArrayList<>();
        for (TransitionKind kind : TransitionKind.values()) {
            times.add(times(kind, logs(done, kind), fluent));
        }
        return new Calibration(times);
    }

    /** The times of a kind. */
    public Times of(TransitionKind kind) {
        return times.get(kind.ordinal());
    }

    /** What was measured, by itself: its medians are not drawn towards what is usual. */
    public static OwnTimes measured(List<CalibrationDrill.Done> done) {
        return new OwnTimes(
                taken(logs(done, TransitionKind.FLUENT)),
                taken(logs(done, TransitionKind.REGRIP)),
                taken(logs(done, TransitionKind.ROTATION)),
                taken(logs(done, TransitionKind.WIDE)));
    }

    private static OwnTimes.Taken taken(double[] logs) {
        return logs.length == 0
                ? OwnTimes.Taken.NEVER
                : new OwnTimes.Taken(logs.length, Math.round(Math.exp(median(logs))));
    }

    private static double[] logs(List<CalibrationDrill.Done> done, TransitionKind kind) {
        List<Long> micros = new ArrayList<>();
        for (CalibrationDrill.Done one : done) {
            for (int transition = 0; transition < one.intervalsMicros().size(); transition++) {
                if (one.exercise().kinds().get(transition) == kind) {
                    micros.add(one.intervalsMicros().get(transition));
                }
            }
        }
        return micros.stream()
                .mapToDouble(time -> Math.log(Math.max(TICK_MICROS, time)))
                .toArray();
    }

    /** The prior and the sample's median, each weighed by its precision (normal on the log scale). */
    private static Times times(TransitionKind kind, double[] logs, double[] fluent) {
        double prior = Math.log(kind.priorMicros);
        double precision = 1 / (PRIOR_LOG_DEVIATION * PRIOR_LOG_DEVIATION);
        double centre = prior;
        if (logs.length > 0) {
            double median = median(logs);
            double error = MEDIAN_COST * deviation(logs, median) / Math.sqrt(logs.length);
            double ofSample = 1 / (error * error);
            centre = (precision * prior + ofSample * median) / (precision + ofSample);
            precision += ofSample;
        }
        double reach = Z / Math.sqrt(precision);
        double area = kind == TransitionKind.FLUENT ? 0.5 : area(logs, fluent);
        return new Times(
                kind,
                logs.length,
                Math.exp(centre),
                new Interval(Math.exp(centre - reach), Math.exp(centre + reach)),
                area,
                kind == TransitionKind.FLUENT ? new Interval(0.5, 0.5) : around(area, logs.length, fluent.length));
    }

    private static double deviation(double[] logs, double median) {
        if (logs.length < FEWEST) {
            return PRIOR_LOG_DEVIATION;
        }
        double spread = NORMAL
                * median(Arrays.stream(logs).map(log -> Math.abs(log - median)).toArray());
        return Math.max(spread, 0.01);
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /** Pairs in which the first is longer, ties counting half (Mann and Whitney 1947); 0.5 without pairs. */
    static double area(double[] longer, double[] shorter) {
        if (longer.length == 0 || shorter.length == 0) {
            return 0.5;
        }
        double won = 0;
        for (double one : longer) {
            for (double other : shorter) {
                won += one > other ? 1 : one == other ? 0.5 : 0;
            }
        }
        return won / longer.length / shorter.length;
    }

    /** Hanley and McNeil 1982 (Radiology 143, 29-36), formula for the standard error of the area. */
    static Interval around(double area, int longer, int shorter) {
        if (longer < FEWEST || shorter < FEWEST) {
            return new Interval(0, 1);
        }
        double q1 = area / (2 - area);
        double q2 = 2 * area * area / (1 + area);
        double variance = (area * (1 - area) + (longer - 1) * (q1 - area * area) + (shorter - 1) * (q2 - area * area))
                / ((double) longer * shorter);
        double reach = Z * Math.sqrt(Math.max(0, variance));
        return new Interval(Math.max(0, area - reach), Math.min(1, area + reach));
    }
}
