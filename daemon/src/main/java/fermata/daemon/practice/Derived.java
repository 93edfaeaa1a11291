package fermata.daemon.practice;

import fermata.analysis.event.Hand;
import fermata.analysis.record.Outcome;
import fermata.daemon.store.AccountRow;
import fermata.daemon.store.DerivationRow;
import fermata.daemon.store.DerivedRows;
import fermata.daemon.store.NightRow;
import fermata.daemon.store.RhythmRow;
import fermata.daemon.store.SnapshotRow;
import fermata.daemon.store.SolveDocument;
import fermata.daemon.store.SolveRow;
import fermata.daemon.store.Store;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Derived rows: in the store where they are kept, in memory where the store may not be written.
 *
 * <p>Thread-safe. What is in memory lies over what is stored, day by day.
 */
final class Derived {
    private static final Comparator<SolveRow> OLDEST_FIRST = Comparator.comparing(SolveRow::day)
            .thenComparing(SolveRow::startedAt)
            .thenComparing(SolveRow::captureId)
            .thenComparing(SolveRow::firstTurn);
    private static final Comparator<AccountRow> NEWEST_FIRST = Comparator.comparing(AccountRow::day)
            .thenComparing(AccountRow::startedAt)
            .thenComparing(AccountRow::solveId)
            .reversed();

    private final Store store;
    private final Map<Long, DerivationRow> captures = new HashMap<>();
    private final Map<LocalDate, DerivedRows> days = new TreeMap<>();

    Derived(Store store) {
        this.store = store;
    }

    /** Puts the results of a day in the place of what was derived for it and for these captures before. */
    synchronized void keep(LocalDate day, DerivedRows rows) {
        if (store.isWritable()) {
            store.derivations().replace(rows);
        } else {
            keepCaptures(rows.captures());
            days.put(day, rows);
        }
    }

    /** Notes that captures were read in which there is nothing. */
    synchronized void keepCaptures(List<DerivationRow> rows) {
        if (store.isWritable()) {
            store.derivations()
                    .replace(new DerivedRows(rows, Set.of(), List.of(), List.of(), List.of(), List.of(), List.of()));
        } else {
            rows.forEach(row -> captures.put(row.captureId(), row));
        }
    }

    synchronized Optional<DerivationRow> capture(long captureId) {
        return Optional.ofNullable(captures.get(captureId))
                .or(() -> store.derivations().find(captureId));
    }

    synchronized List<DerivationRow> captures() {
        return store.captures().all().stream()
                .flatMap(capture -> capture(capture.id()).stream())
                .toList();
    }

    /** The days on which attempts of a capture began, as far as they were derived. */
    synchronized Set<LocalDate> days(long captureId) {
        Set<LocalDate> found = new HashSet<>(store.derivations().days(captureId));
        found.removeAll(days.keySet());
        days.forEach((day, rows) -> {
            if (rows.solves().stream().anyMatch(solve -> solve.row().captureId() == captureId)) {
                found.add(day);
            }
        });
        return found;
    }

    /** All rhythms that days began from and left. */
    synchronized List<RhythmRow> rhythms() {
        List<RhythmRow> rhythms = new ArrayList<>();
        store.derivations().rhythms().stream()
                .filter(row -> !days.containsKey(row.day()))
                .forEach(rhythms::add);
        days.values().forEach(rows -> rhythms.addAll(rows.rhythms()));
        return rhythms;
    }

    /** The JSON of frozen parameters. */
    synchronized Optional<String> snapshot(String id) {
        return days.values().stream()
                .flatMap(rows -> rows.snapshots().stream())
                .filter(row -> row.id().equals(id))
                .findFirst()
                .or(() -> store.derivations().snapshot(id))
                .map(SnapshotRow::json);
    }

    synchronized List<SolveRow> solves() {
        List<SolveRow> solves = new ArrayList<>();
        for (SolveRow stored : store.derivations().solves()) {
            if (!days.containsKey(stored.day())) {
                solves.add(stored);
            }
        }
        days.values().forEach(rows -> rows.solves().forEach(solve -> solves.add(solve.row())));
        solves.sort(OLDEST_FIRST);
        return solves;
    }

    synchronized List<SolveRow> solves(LocalDate day) {
        return days.containsKey(day)
                ? days.get(day).solves().stream().map(SolveDocument::row).toList()
                : store.derivations().solves(day);
    }

    synchronized Optional<SolveDocument> solve(String id) {
        return days.values().stream()
                .flatMap(rows -> rows.solves().stream())
                .filter(solve -> solve.row().id().equals(id))
                .findFirst()
                .or(() -> store.derivations()
                        .solve(id)
                        .filter(solve -> !days.containsKey(solve.row().day())));
    }

    synchronized Optional<NightRow> night(LocalDate day) {
        return days.containsKey(day)
                ? days.get(day).nights().stream().findFirst()
                : store.derivations().night(day);
    }

    synchronized List<NightRow> nights() {
        Map<LocalDate, NightRow> nights = new TreeMap<>();
        store.derivations().nights().stream()
                .filter(night -> !days.containsKey(night.day()))
                .forEach(night -> nights.put(night.day(), night));
        days.values().forEach(rows -> rows.nights().forEach(night -> nights.put(night.day(), night)));
        return List.copyOf(nights.values());
    }

    /** The accounts of one practice day, oldest first. */
    synchronized List<AccountRow> accounts(LocalDate day) {
        return days.containsKey(day)
                ? days.get(day).accounts()
                : store.accounts().of(day);
    }

    /** The solved ones of an owner before a day, not set aside, newest first, at most so many. */
    synchronized List<AccountRow> readBefore(RhythmChain.Owner owner, LocalDate day, int most) {
        List<AccountRow> found = new ArrayList<>(
                store.accounts().before(day, owner.solver(), owner.cube(), Hand.of(owner.hand()), days.keySet(), most));
        days.forEach((ofRows, rows) -> rows.accounts().stream()
                .filter(account -> ofRows.isBefore(day)
                        && account.outcome() == Outcome.SOLVED
                        && !account.series().isSetAside()
                        && RhythmChain.Owner.of(account.series()).equals(owner))
                .forEach(found::add));
        found.sort(NEWEST_FIRST);
        return found.subList(0, Math.min(most, found.size()));
    }

    /** The solved and timed ones of the same series before one, newest first, at most so many. */
    synchronized List<AccountRow> accountsBefore(AccountRow row, int most) {
        List<AccountRow> found = new ArrayList<>(store.accounts().before(row, days.keySet(), most));
        days.values()
                .forEach(rows -> rows.accounts().stream()
                        .filter(account -> account.isSolvedAndTimed()
                                && account.series().equals(row.series())
                                && NEWEST_FIRST.compare(account, row) > 0)
                        .forEach(found::add));
        found.sort(NEWEST_FIRST);
        return found.subList(0, Math.min(most, found.size()));
    }
}
