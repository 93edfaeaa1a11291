package fermata.daemon.store;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;

/**
 * What one derivation gives, to be kept together.
 *
 * @param captures what was read, and how much of it
 * @param days the practice days whose earlier results these replace
 * @param snapshots the parameters that were used
 * @param nights at most one a day
 * @param solves all solves of those days
 */
public record DerivedRows(
        List<DerivationRow> captures,
        Set<LocalDate> days,
        List<SnapshotRow> snapshots,
        List<NightRow> nights,
        List<SolveDocument> solves) {
    public DerivedRows {
        captures = List.copyOf(captures);
        days = Set.copyOf(days);
        snapshots = List.copyOf(snapshots);
        nights = List.copyOf(nights);
        solves = List.copyOf(solves);
    }
}
