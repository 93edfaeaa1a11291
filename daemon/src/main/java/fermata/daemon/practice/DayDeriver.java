package fermata.daemon.practice;

import fermata.analysis.PracticeAnalysis;
import fermata.analysis.event.Event;
import fermata.analysis.record.NightRecord;
import fermata.analysis.record.Segment;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.rhythm.RhythmSnapshot;
import fermata.daemon.json.Json;
import fermata.daemon.json.SolveView;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.DerivationRow;
import fermata.daemon.store.DerivedRows;
import fermata.daemon.store.NightRow;
import fermata.daemon.store.SnapshotRow;
import fermata.daemon.store.SolveDocument;
import fermata.daemon.store.SolveRow;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Analyses whole practice days: learns each night's rhythm from all its captures, freezes it, and reads every attempt
 * of the day by it. The same captures give the same rows. Linear in the turns of the captures.
 */
final class DayDeriver {
    /** What derives here: results of another version are derived again. */
    static final String VERSION = PracticeAnalysis.CODE_VERSION + "/daemon-3";

    private static final Comparator<SolveRow> OLDEST_FIRST = Comparator.comparing(SolveRow::startedAt)
            .thenComparing(SolveRow::captureId)
            .thenComparing(SolveRow::firstTurn);

    /**
     * A capture to derive from.
     *
     * @param row the capture
     * @param extent how far it went when it was read
     * @param reading its events
     * @param version what derives it: this code, the model of the holds, the solver's corrections
     */
    record Source(CaptureRow row, String extent, CaptureReading reading, String version) {
        /** Civil time of a moment of the capture. */
        Instant wall(long atMicros) {
            Instant start = row.start().startedWall();
            return atMicros == Event.NO_TIME ? start : start.plus(atMicros, ChronoUnit.MICROS);
        }

        /** The practice days on which its attempts began. */
        Set<LocalDate> days() {
            List<Event.Turned> turns = reading.log().turns();
            Set<LocalDate> days = new TreeSet<>();
            for (Segment segment : PracticeAnalysis.segments(reading.log())) {
                if (segment instanceof Segment.Attempt attempt) {
                    days.add(day(turns.get(attempt.solve().from()).atMicros()));
                }
            }
            return days;
        }

        private LocalDate day(long atMicros) {
            return PracticeDay.of(wall(atMicros), row.start().zone());
        }

        private DerivationRow derivation() {
            long attempts = PracticeAnalysis.segments(reading.log()).stream()
                    .filter(Segment.Attempt.class::isInstance)
                    .count();
            Tally tally = reading.tally();
            return new DerivationRow(
                    row.id(), version, extent, tally.heard(), tally.repaired(), tally.lost(), attempts);
        }
    }

    private DayDeriver() {}

    /**
     * Derives days.
     *
     * @param days whose results are wanted
     * @param sources all captures that have attempts on those days, and perhaps others
     * @param hands reads what hands did
     */
    static DerivedRows derive(Set<LocalDate> days, List<Source> sources, Hands hands) {
        List<SnapshotRow> snapshots = new ArrayList<>();
        List<NightRow> nights = new ArrayList<>();
        List<SolveDocument> solves = new ArrayList<>();
        for (LocalDate day : days) {
            List<Source> here = sources.stream()
                    .filter(source -> source.days().contains(day))
                    .toList();
            if (!here.isEmpty()) {
                RhythmSnapshot rhythm = PracticeAnalysis.learn(
                        here.stream().map(source -> source.reading().log()).toList());
                snapshots.add(new SnapshotRow(rhythm.id(), day, Json.write(rhythm)));
                nights.add(night(day, here, rhythm, hands, solves));
            }
        }
        List<DerivationRow> captures = sources.stream().map(Source::derivation).toList();
        return new DerivedRows(captures, days, snapshots, nights, solves);
    }

    private static NightRow night(
            LocalDate day,
            List<Source> sources,
            RhythmSnapshot rhythm,
            Hands hands,
            List<SolveDocument> solvesOfAllDays) {
        record Found(SolveRecord solve, SolveDocument document) {}
        List<Found> found = new ArrayList<>();
        for (Source source : sources) {
            for (SolveRecord solve : PracticeAnalysis.analyse(source.reading().log(), rhythm)) {
                if (source.day(solve.firstTurnAtMicros()).equals(day)) {
                    found.add(new Found(solve, document(solve, source, hands)));
                }
            }
        }
        found.sort(Comparator.comparing(one -> one.document().row(), OLDEST_FIRST));
        found.forEach(one -> solvesOfAllDays.add(one.document()));
        NightRecord night =
                PracticeAnalysis.night(day, found.stream().map(Found::solve).toList(), rhythm);
        return new NightRow(day, VERSION, rhythm.id(), Json.write(NightViews.view(night)));
    }

    private static SolveDocument document(SolveRecord solve, Source source, Hands hands) {
        Instant startedAt = source.wall(solve.firstTurnAtMicros());
        SolveView view = SolveViews.view(
                solve,
                source.reading(),
                hands.read(solve, source.reading().log()),
                startedAt,
                source.row().start().zone());
        SolveRow row = new SolveRow(
                solve.id(),
                source.row().id(),
                LocalDate.parse(view.day()),
                startedAt.truncatedTo(ChronoUnit.MILLIS),
                solve.firstTurn(),
                source.version(),
                solve.provenance().snapshotId(),
                Json.write(SolveViews.item(view)));
        return new SolveDocument(row, Json.write(view));
    }
}
