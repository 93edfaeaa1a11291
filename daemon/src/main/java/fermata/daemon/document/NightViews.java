package fermata.daemon.document;

import fermata.analysis.hotspot.HotspotKey;
import fermata.analysis.hotspot.Hotspots;
import fermata.analysis.hotspot.RankedHotspot;
import fermata.analysis.hotspot.Series;
import fermata.analysis.load.HandLoad;
import fermata.analysis.night.NightFigures;
import fermata.analysis.night.NightReport;
import fermata.analysis.night.NightReport.FigureTrend;
import fermata.analysis.night.NightReport.OtherSeries;
import fermata.analysis.night.Trend;
import fermata.analysis.record.Result;
import fermata.analysis.record.RunOfResults;
import fermata.analysis.record.StageName;
import fermata.analysis.rest.Cause;
import fermata.daemon.json.NightView;
import fermata.daemon.json.NightsView;
import fermata.daemon.json.Over;
import fermata.daemon.json.SolveView;
import fermata.daemon.json.WrittenDay;
import java.time.LocalDate;
import java.util.stream.Stream;

/** Puts the analysis' report of practice days into the document that is printed. Stateless. */
public final class NightViews {
    private static final String DNF = "DNF";
    private static final double THOUSANDTHS = 1000;
    private static final double TENTHS = 10;

    private NightViews() {}

    /** What lists of days say of a day. */
    public static NightsView.Item item(LocalDate day, NightFigures figures) {
        return new NightsView.Item(
                WrittenDay.of(day), figures.solves(), micros(figures.best()), micros(figures.mean()));
    }

    /** The whole of it. */
    public static NightView view(
            NightReport report, Over over, LocalDate from, LocalDate to, SolveView.Derived derived) {
        NightFigures figures = report.figures();
        NightReport.Places places = report.places();
        return new NightView(
                WrittenDay.of(to),
                over.written(),
                WrittenDay.of(from),
                WrittenDay.of(to),
                report.nights(),
                series(report.series()),
                figures.solves(),
                figures.abandoned(),
                micros(figures.best()),
                micros(figures.mean()),
                micros(figures.spread()),
                averages(figures.average5()),
                averages(figures.trimmed12()),
                report.stages().stream().map(NightViews::stage).toList(),
                Stream.of(places.byChange(), places.byCause(), places.byChangeAndCause(), places.finest())
                        .flatMap(spots -> spots.ranked().stream())
                        .map(NightViews::hotspot)
                        .toList(),
                // Of the finer places nearly all have too few.
                Stream.of(places.byChange(), places.byCause())
                        .flatMap(spots -> spots.tooFew().stream())
                        .map(NightViews::tooFew)
                        .toList(),
                report.trends().stream().map(NightViews::trend).toList(),
                load(report.load()),
                report.others().stream()
                        .map(other -> other(report.series(), other))
                        .toList(),
                derived);
    }

    static NightView.Series series(Series series) {
        return new NightView.Series(series.hand().written(), series.method().written());
    }

    private static NightView.Stage stage(NightReport.StageShare stage) {
        return new NightView.Stage(
                stage.name().written(),
                Math.round(stage.medianMicros()),
                Math.round(stage.share() * THOUSANDTHS) / THOUSANDTHS);
    }

    private static NightView.Hotspot hotspot(RankedHotspot spot) {
        HotspotKey key = spot.key();
        return new NightView.Hotspot(
                key.before().map(StageName::written).orElse(null),
                key.after().map(StageName::written).orElse(null),
                orNull(key.caseName()),
                key.cause().map(Cause::written).orElse(null),
                orNull(key.hold()),
                Math.round(spot.perSolveMicros()),
                Math.round(spot.interval().low()),
                Math.round(spot.interval().high()),
                spot.occurrences(),
                NightSentences.of(spot),
                spot.examples().stream()
                        .map(loss -> new NightView.Example(loss.solveId(), loss.atMicros()))
                        .toList());
    }

    private static NightView.TooFew tooFew(Hotspots.TooFew few) {
        HotspotKey key = few.key();
        return new NightView.TooFew(
                key.before().map(StageName::written).orElse(null),
                key.after().map(StageName::written).orElse(null),
                orNull(key.caseName()),
                key.cause().map(Cause::written).orElse(null),
                orNull(key.hold()),
                few.occurrences(),
                NightSentences.of(few));
    }

    private static String orNull(String word) {
        return word.isEmpty() ? null : word;
    }

    private static NightView.Trend trend(FigureTrend figure) {
        String sentence = NightSentences.of(figure);
        return figure.trend()
                .fold(
                        moves -> new NightView.Trend(
                                figure.figure(),
                                "moves",
                                Math.round(moves.perDay()),
                                Math.round(moves.interval().low()),
                                Math.round(moves.interval().high()),
                                moves.nights(),
                                Trend.NIGHTS_NEEDED,
                                sentence),
                        none -> new NightView.Trend(
                                figure.figure(),
                                "none_seen",
                                null,
                                Math.round(none.interval().low()),
                                Math.round(none.interval().high()),
                                none.nights(),
                                Trend.NIGHTS_NEEDED,
                                sentence),
                        few -> new NightView.Trend(
                                figure.figure(), "too_few", null, null, null, few.nights(), few.needed(), sentence));
    }

    private static NightView.Load load(HandLoad load) {
        return new NightView.Load(
                load.turns(),
                Math.round(load.regrips()),
                Math.round(load.turningMinutes() * TENTHS) / TENTHS,
                Math.round(load.longestMinutes() * TENTHS) / TENTHS,
                NightSentences.advice(load));
    }

    private static NightView.OtherSeries other(Series main, OtherSeries other) {
        Series series = other.series();
        return new NightView.OtherSeries(
                series.hand().written(),
                series.method().written(),
                !series.solver().equals(main.solver()),
                !series.cube().equals(main.cube()),
                series.isSetAside(),
                other.solves(),
                Math.round(other.meanMicros()));
    }

    private static NightView.Averages averages(RunOfResults run) {
        return new NightView.Averages(timeOrDnf(run.latest()), timeOrDnf(run.best()));
    }

    private static Object timeOrDnf(Result result) {
        return result.<Object>fold(Result.Time::micros, dnf -> DNF, few -> null);
    }

    private static Long micros(Result result) {
        return result.fold(Result.Time::micros, dnf -> null, few -> null);
    }
}
