package fermata.daemon.reading;

import fermata.analysis.PracticeAnalysis;
import fermata.analysis.event.Event;
import fermata.analysis.record.SolveRecord;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.DerivationRow;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * A capture to derive from.
 *
 * @param row the capture
 * @param extent how far it went when it was read
 * @param reading its events
 * @param version what derives it: this code, the model of the holds, the solver's corrections
 * @param solves its attempts, in order
 */
public record Source(CaptureRow row, String extent, CaptureReading reading, String version, List<SolveRecord> solves) {
    public Source {
        solves = List.copyOf(solves);
    }

    /** Finds the attempts; linear in the turns. */
    public static Source of(CaptureRow row, String extent, CaptureReading reading, String version) {
        return new Source(row, extent, reading, version, PracticeAnalysis.solves(reading.log()));
    }

    /** Civil time of a solve's first turn; of the capture's beginning, if there is no clock. */
    public Instant startedAt(SolveRecord solve) {
        Instant start = row.start().startedWall();
        return solve.firstTurnAtMicros() == Event.NO_TIME
                ? start
                : start.plus(solve.firstTurnAtMicros(), ChronoUnit.MICROS);
    }

    public LocalDate day(SolveRecord solve) {
        return row.start().isDated()
                ? PracticeDay.of(startedAt(solve), row.start().zone())
                : WrittenDay.UNKNOWN;
    }

    /** The practice days on which its attempts began. */
    public Set<LocalDate> days() {
        return solves.stream().map(this::day).collect(Collectors.toCollection(TreeSet::new));
    }

    public DerivationRow derivation() {
        Tally tally = reading.tally();
        return new DerivationRow(
                row.id(), version, extent, tally.heard(), tally.repaired(), tally.lost(), solves.size());
    }
}
