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
import fermata.daemon.store.StoreException;
import fermata.daemon.store.StoreFault;
import fermata.daemon.store.UnreadableDerivationException;
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
import java.util.function.Function;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Derived rows: in the store where they are kept, in memory where the store may not be written.
 *
 * <p>Thread-safe. What is in memory lies over what is stored, day by day.
 */
final class Derived {
    private static final Logger LOG = LoggerFactory.getLogger(Derived.class);
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
    /** Days that were thrown away because something of them could not be read. */
    private final Set<LocalDate> forgotten = new HashSet<>();

    private boolean isAllForgotten;
    /** Whether nothing that is stored may be taken: then all is in memory. */
    private boolean isStoreDistrusted;

    Derived(Store store) {
        this.store = store;
    }

    /** Puts the results of a day in the place of what was derived for it and for these captures before. */
    synchronized void keep(LocalDate day, DerivedRows rows) {
        if (!stored(rows)) {
            rows.captures().forEach(row -> captures.put(row.captureId(), row));
            days.put(day, rows);
        }
    }

    /** Notes that captures were read in which there is nothing. */
    synchronized void keepCaptures(List<DerivationRow> rows) {
        if (!stored(new DerivedRows(rows, Set.of(), List.of(), List.of(), List.of(), List.of(), List.of()))) {
            rows.forEach(row -> captures.put(row.captureId(), row));
        }
    }

    /** Keeps it in the store if that can be written now; a full disk must not keep anybody from an answer. */
    private boolean stored(DerivedRows rows) {
        if (!store.isWritable() || isStoreDistrusted) {
            return false;
        }
        try {
            store.derivations().replace(rows);
            rows.days().forEach(days::remove);
            rows.captures().forEach(row -> captures.remove(row.captureId()));
            return true;
        } catch (StoreException e) {
            if (!e.fault().isOnlyOfWriting() && e.fault() != StoreFault.DAMAGED) {
                throw e;
            }
            LOG.info("what was derived is kept in memory only: {}", e.getMessage());
            return false;
        }
    }

    /**
     * Throws away what cannot be read, so that it is derived again: its day, or all days where that does not help.
     * Where the store cannot be written, all is derived in memory. False if there is nothing left to throw away.
     */
    synchronized boolean forget(UnreadableDerivationException unreadable) {
        if (isStoreDistrusted) {
            return false;
        }
        Optional<LocalDate> day = unreadable.day().filter(forgotten::add);
        LOG.info(
                "what was derived {} is thrown away and derived again: {}",
                day.map(each -> "of " + each).orElse("of all days"),
                unreadable.getMessage());
        days.clear();
        captures.clear();
        isStoreDistrusted = !store.isWritable() || !isForgottenInStore(day);
        return true;
    }

    private boolean isForgottenInStore(Optional<LocalDate> day) {
        try {
            if (day.isPresent()) {
                store.derivations().forget(day.get());
                return true;
            }
            if (isAllForgotten) {
                // Once more and it is still not as it was kept.
                return false;
            }
            isAllForgotten = true;
            store.derivations().forgetAll();
            return true;
        } catch (StoreException e) {
            LOG.info("it cannot be thrown away and is left out: {}", e.getMessage());
            return false;
        }
    }

    /** Whether what the store holds of a day is to be taken. */
    private boolean isStored(LocalDate day) {
        return !days.containsKey(day);
    }

    private <T> List<T> stored(Supplier<List<T>> rows, Function<T, LocalDate> day) {
        return isStoreDistrusted
                ? List.of()
                : rows.get().stream().filter(row -> isStored(day.apply(row))).toList();
    }

    synchronized Optional<DerivationRow> capture(long captureId) {
        return Optional.ofNullable(captures.get(captureId))
                .or(() -> isStoreDistrusted
                        ? Optional.empty()
                        : store.derivations().find(captureId));
    }

    synchronized List<DerivationRow> captures() {
        return store.captures().all().stream()
                .flatMap(capture -> capture(capture.id()).stream())
                .toList();
    }

    /** The days on which attempts of a capture began, as far as they were derived. */
    synchronized Set<LocalDate> days(long captureId) {
        Set<LocalDate> found = new HashSet<>(stored(() -> store.derivations().days(captureId), day -> day));
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
        rhythms.addAll(stored(() -> store.derivations().rhythms(), RhythmRow::day));
        days.values().forEach(rows -> rhythms.addAll(rows.rhythms()));
        return rhythms;
    }

    /** The JSON of frozen parameters. */
    synchronized Optional<String> snapshot(String id) {
        return days.values().stream()
                .flatMap(rows -> rows.snapshots().stream())
                .filter(row -> row.id().equals(id))
                .findFirst()
                .or(() -> isStoreDistrusted
                        ? Optional.empty()
                        : store.derivations().snapshot(id))
                .map(SnapshotRow::json);
    }

    synchronized List<SolveRow> solves() {
        List<SolveRow> solves = new ArrayList<>(stored(() -> store.derivations().solves(), SolveRow::day));
        days.values().forEach(rows -> rows.solves().forEach(solve -> solves.add(solve.row())));
        solves.sort(OLDEST_FIRST);
        return solves;
    }

    synchronized List<SolveRow> solves(LocalDate day) {
        return days.containsKey(day)
                ? days.get(day).solves().stream().map(SolveDocument::row).toList()
                : stored(() -> store.derivations().solves(day), SolveRow::day);
    }

    synchronized Optional<SolveDocument> solve(String id) {
        return days.values().stream()
                .flatMap(rows -> rows.solves().stream())
                .filter(solve -> solve.row().id().equals(id))
                .findFirst()
                .or(() ->
                        stored(
                                        () -> store.derivations().solve(id).stream()
                                                .toList(),
                                        solve -> solve.row().day())
                                .stream()
                                .findFirst());
    }

    synchronized Optional<NightRow> night(LocalDate day) {
        return days.containsKey(day)
                ? days.get(day).nights().stream().findFirst()
                : stored(() -> store.derivations().night(day).stream().toList(), NightRow::day).stream()
                        .findFirst();
    }

    synchronized List<NightRow> nights() {
        Map<LocalDate, NightRow> nights = new TreeMap<>();
        stored(() -> store.derivations().nights(), NightRow::day).forEach(night -> nights.put(night.day(), night));
        days.values().forEach(rows -> rows.nights().forEach(night -> nights.put(night.day(), night)));
        return List.copyOf(nights.values());
    }

    /** The accounts of one practice day, oldest first. */
    synchronized List<AccountRow> accounts(LocalDate day) {
        return days.containsKey(day)
                ? days.get(day).accounts()
                : stored(() -> store.accounts().of(day), AccountRow::day);
    }

    /** The solved ones of an owner before a day, not set aside, newest first, at most so many. */
    synchronized List<AccountRow> readBefore(RhythmChain.Owner owner, LocalDate day, int most) {
        List<AccountRow> found = new ArrayList<>(stored(
                () -> store.accounts()
                        .before(day, owner.solver(), owner.cube(), Hand.of(owner.hand()), days.keySet(), most),
                AccountRow::day));
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
        List<AccountRow> found =
                new ArrayList<>(stored(() -> store.accounts().before(row, days.keySet(), most), AccountRow::day));
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
