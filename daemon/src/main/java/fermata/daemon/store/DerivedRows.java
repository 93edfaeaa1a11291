package fermata.daemon.store;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;

/**
 * What one derivation gives, to be kept together.
 *
 * @param captures what was read, and how much of it
 * @param days the practice days whose earlier results these replace
 * @param snapshots the parameters that these days taught
 * @param rhythms what each series' day began from and what it left
 * @param nights at most one a day
 * @param solves all solves of those days
 * @param accounts of the same solves
 */
public record DerivedRows(
        List<DerivationRow> captures,
        Set<LocalDate> days,
        List<SnapshotRow> snapshots,
        List<RhythmRow> rhythms,
        List<NightRow> nights,
        List<SolveDocument> solves,
        List<AccountRow> accounts) {
    public DerivedRows {
        captures = List.copyOf(captures);
        days = Set.copyOf(days);
        snapshots = List.copyOf(snapshots);
        rhythms = List.copyOf(rhythms);
        nights = List.copyOf(nights);
        solves = List.copyOf(solves);
        accounts = List.copyOf(accounts);
    }
}
