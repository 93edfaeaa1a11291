package fermata.analysis.night;

import fermata.analysis.hotspot.HotspotRanking;
import fermata.analysis.hotspot.Loss;
import fermata.analysis.night.NightReport.FigureTrend;
import fermata.analysis.rest.Cause;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.statistics.descriptive.Median;

/**
 * The nightly figures of one series. A night counts if it has at least {@link HotspotRanking#NEEDED} solves: the mean
 * of one or two would move a trend by chance alone.
 */
final class NightTrends {
    /** A millisecond a day, 0.03 s a month: less is told to nobody's use. */
    private static final double LEAST_MICROS_PER_DAY = 1_000;

    private static final String TIME = "time";
    private static final String RESTS = "rests";

    private record Night(long day, double medianMicros, Map<String, Double> perSolve) {}

    private final List<Night> nights = new ArrayList<>();
    private long day = Long.MIN_VALUE;
    private int solves;
    private DoubleStream.Builder times = DoubleStream.builder();
    private Map<String, Double> losses = new HashMap<>();

    void add(long solveDay, SolveAccount solve) {
        if (solveDay != day) {
            close();
            day = solveDay;
        }
        solves++;
        times.add(solve.timeMicros());
        for (Loss loss : solve.losses()) {
            loss.key().cause().ifPresent(cause -> losses.merge(cause.written(), loss.micros(), Double::sum));
            losses.merge(RESTS, loss.micros(), Double::sum);
        }
    }

    private void close() {
        if (solves >= HotspotRanking.NEEDED) {
            int of = solves;
            losses.replaceAll((figure, micros) -> micros / of);
            double median = Median.withDefaults().evaluate(times.build().toArray());
            nights.add(new Night(day, median, losses));
        }
        solves = 0;
        times = DoubleStream.builder();
        losses = new HashMap<>();
    }

    /** Turn time, all rests, then the causes, judged together; may be asked once, when all is added. */
    List<FigureTrend> trends() {
        close();
        List<String> names = new ArrayList<>(List.of(TIME, RESTS));
        Stream.of(Cause.values()).map(Cause::written).forEach(names::add);
        List<Trend> trends = Trend.together(
                nights.stream().mapToDouble(Night::day).toArray(),
                names.stream().map(this::figure).toList(),
                LEAST_MICROS_PER_DAY);
        return IntStream.range(0, names.size())
                .mapToObj(index -> new FigureTrend(names.get(index), trends.get(index)))
                .toList();
    }

    private double[] figure(String name) {
        return nights.stream()
                .mapToDouble(night -> name.equals(TIME) ? night.medianMicros : night.perSolve.getOrDefault(name, 0.0))
                .toArray();
    }
}
