package fermata.daemon.practice;

import fermata.analysis.record.NightRecord;
import fermata.analysis.record.Result;
import fermata.analysis.record.RunOfResults;
import fermata.daemon.json.NightView;
import fermata.daemon.json.SolveView;

/** Puts the analysis' summary of a day into the document that is printed and kept. Stateless. */
final class NightViews {
    private static final String DNF = "DNF";

    private NightViews() {}

    static NightView view(NightRecord night) {
        return new NightView(
                night.day().toString(),
                night.solves(),
                night.abandoned(),
                micros(night.best()),
                micros(night.mean()),
                micros(night.spread()),
                averages(night.average5()),
                averages(night.trimmed12()),
                night.hotspots().stream()
                        .map(hotspot -> new NightView.Hotspot(
                                hotspot.before().written(),
                                hotspot.after().written(),
                                hotspot.count(),
                                micros(hotspot.typical())))
                        .toList(),
                new SolveView.Derived(
                        night.provenance().codeVersion(), night.provenance().snapshotId()));
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
