package fermata.analysis.night;

import fermata.analysis.hotspot.HotspotKey;
import fermata.analysis.hotspot.Hotspots;
import fermata.analysis.hotspot.Series;
import fermata.analysis.load.HandLoad;
import fermata.analysis.record.StageName;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * All that is said of a practice day, or of many.
 *
 * @param nights on how many days there was practice
 * @param series what places, stages and trends are about: the series with the most solves
 * @param figures of every attempt by that solver with that cube and hand that was not set aside, by whichever method
 * @param stages in the order of the solve
 * @param places where time went
 * @param perSolveMicros what each cause costs at each change, ranked or not
 * @param trends of nightly figures, the nights before included where they were given
 * @param load of that hand, whatever it practised on
 * @param others the other series, most solves first
 */
public record NightReport(
        int nights,
        Series series,
        NightFigures figures,
        List<StageShare> stages,
        Places places,
        Map<HotspotKey, Double> perSolveMicros,
        List<FigureTrend> trends,
        HandLoad load,
        List<OtherSeries> others) {
    /**
     * Where time went, counted four ways.
     *
     * @param byChange by the change of stages, or the stage within which
     * @param byCause by cause
     * @param byChangeAndCause by both
     * @param finest by change, case, cause and hold
     */
    public record Places(Hotspots byChange, Hotspots byCause, Hotspots byChangeAndCause, Hotspots finest) {
        public Places {
            Objects.requireNonNull(byChange, "byChange");
            Objects.requireNonNull(byCause, "byCause");
            Objects.requireNonNull(byChangeAndCause, "byChangeAndCause");
            Objects.requireNonNull(finest, "finest");
        }
    }

    /**
     * A stage, as it usually goes.
     *
     * @param name which
     * @param medianMicros of all solves that have it
     * @param share of all time in all solves
     */
    public record StageShare(StageName name, double medianMicros, double share) {
        public StageShare {
            Objects.requireNonNull(name, "name");
        }
    }

    /**
     * How a nightly figure moves.
     *
     * @param figure {@code time}: the night's median turn time; {@code rests}: all loss per solve; or a cause
     * @param trend microseconds a day
     */
    public record FigureTrend(String figure, Trend trend) {
        public FigureTrend {
            Objects.requireNonNull(figure, "figure");
            Objects.requireNonNull(trend, "trend");
        }
    }

    /**
     * A series that is not compared.
     *
     * @param series which
     * @param solves its solved attempts with times, at least 1
     * @param meanMicros of their turn times
     */
    public record OtherSeries(Series series, int solves, double meanMicros) {
        public OtherSeries {
            Objects.requireNonNull(series, "series");
        }
    }

    public NightReport {
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(figures, "figures");
        stages = List.copyOf(stages);
        Objects.requireNonNull(places, "places");
        perSolveMicros = Map.copyOf(perSolveMicros);
        trends = List.copyOf(trends);
        Objects.requireNonNull(load, "load");
        others = List.copyOf(others);
    }
}
