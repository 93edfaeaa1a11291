package fermata.daemon.practice;

import fermata.analysis.hotspot.Hotspots;
import fermata.analysis.hotspot.RankedHotspot;
import fermata.analysis.night.NightLedger;
import fermata.analysis.night.NightReport;
import fermata.analysis.record.NightRecord;
import fermata.analysis.record.Result;
import fermata.analysis.record.RunOfResults;
import fermata.daemon.json.NightView;
import fermata.daemon.json.SolveView;
import fermata.daemon.store.AccountRow;
import java.time.LocalDate;
import java.util.List;
import java.util.SplittableRandom;

/** Puts the analysis' summary of a day into the document that is printed and kept. Stateless. */
final class NightViews {
    private static final String DNF = "DNF";

    private NightViews() {}

    /**
     * The whole of it.
     *
     * @param accounts of the day's attempts, oldest first, with the moments they began
     */
    static NightView view(NightRecord night, List<AccountRow> accounts, SolveView.Derived derived) {
        Hotspots hotspots = hotspots(night.day(), accounts);
        return new NightView(
                night.day().toString(),
                night.solves(),
                night.abandoned(),
                micros(night.best()),
                micros(night.mean()),
                micros(night.spread()),
                averages(night.average5()),
                averages(night.trimmed12()),
                hotspots.ranked().stream().map(NightViews::hotspot).toList(),
                hotspots.tooFew().stream().map(NightViews::tooFew).toList(),
                derived);
    }

    /** Where time went at the changes of stages, in the series with the most solves. The same day gives the same. */
    private static Hotspots hotspots(LocalDate day, List<AccountRow> accounts) {
        AccountRows reader = new AccountRows();
        NightLedger ledger = new NightLedger(day);
        accounts.forEach(row -> ledger.add(day, row.startedAt().toEpochMilli() * 1000, reader.read(row)));
        return ledger.report(new SplittableRandom(day.toEpochDay()))
                .map(NightReport::byChange)
                .orElse(new Hotspots(List.of(), List.of()));
    }

    private static NightView.Hotspot hotspot(RankedHotspot spot) {
        return new NightView.Hotspot(
                orNull(spot.key().before()),
                orNull(spot.key().after()),
                orNull(spot.key().caseName()),
                orNull(spot.key().cause()),
                orNull(spot.key().hold()),
                Math.round(spot.perSolveMicros()),
                Math.round(spot.interval().low()),
                Math.round(spot.interval().high()),
                spot.occurrences(),
                spot.examples().stream()
                        .map(loss -> new NightView.Example(loss.solveId(), loss.atMicros()))
                        .toList());
    }

    private static NightView.TooFew tooFew(Hotspots.TooFew few) {
        return new NightView.TooFew(
                orNull(few.key().before()),
                orNull(few.key().after()),
                orNull(few.key().caseName()),
                orNull(few.key().cause()),
                orNull(few.key().hold()),
                few.occurrences());
    }

    private static String orNull(String word) {
        return word.isEmpty() ? null : word;
    }

    private static NightView.Averages averages(RunOfResults run) {
        return new NightView.Averages(timeOrDnf(run.latest()), timeOrDnf(run.best()));
    }

    private static Object timeOrDnf(Result result) {
        return result instanceof Result.Dnf ? DNF : micros(result);
    }

    private static Long micros(Result result) {
        return result instanceof Result.Time time ? Long.valueOf(time.micros()) : null;
    }
}
