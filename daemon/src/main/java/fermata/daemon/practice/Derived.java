package fermata.daemon.practice;

import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.DerivationRow;
import fermata.daemon.store.DerivedRows;
import fermata.daemon.store.NightRow;
import fermata.daemon.store.SolveDocument;
import fermata.daemon.store.SolveRow;
import fermata.daemon.store.Store;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Derived rows, up to date: from the store where they are kept, from memory where the store may not be written.
 *
 * <p>Thread-safe. What is in memory lies over what is stored, day by day.
 */
final class Derived {
    private static final Comparator<SolveRow> OLDEST_FIRST = Comparator.comparing(SolveRow::day)
            .thenComparing(SolveRow::startedAt)
            .thenComparing(SolveRow::captureId)
            .thenComparing(SolveRow::firstTurn);

    private final Store store;
    private final CaptureReader reader;
    private final Map<Long, DerivationRow> capturesInMemory = new HashMap<>();
    private final Map<LocalDate, List<SolveDocument>> solvesInMemory = new TreeMap<>();
    private final Map<LocalDate, NightRow> nightsInMemory = new TreeMap<>();

    Derived(Store store) {
        this.store = store;
        this.reader = new CaptureReader(store.captures());
    }

    synchronized boolean isStale() {
        return store.captures().all().stream().anyMatch(this::isStale);
    }

    synchronized void refresh() {
        List<CaptureRow> all = store.captures().all();
        List<CaptureRow> stale = all.stream().filter(this::isStale).toList();
        if (stale.isEmpty()) {
            return;
        }
        Map<Long, DayDeriver.Source> sources = new TreeMap<>();
        Set<LocalDate> days = new TreeSet<>();
        for (CaptureRow capture : stale) {
            DayDeriver.Source source = source(capture);
            sources.put(capture.id(), source);
            days.addAll(source.days());
            days.addAll(store.derivations().days(capture.id()));
        }
        // A day is learned from as a whole, so the other captures of these days are read too.
        for (LocalDate day : days) {
            for (SolveRow solve : solves(day)) {
                sources.computeIfAbsent(
                        solve.captureId(),
                        id -> source(store.captures().find(id).orElseThrow()));
            }
        }
        keep(DayDeriver.derive(days, List.copyOf(sources.values()), new Hands(store.captures(), reader)));
    }

    private boolean isStale(CaptureRow capture) {
        return capture(capture.id())
                .filter(row -> row.codeVersion().equals(version(capture))
                        && row.extent().equals(store.captures().extent(capture.id())))
                .isEmpty();
    }

    private String version(CaptureRow capture) {
        return DayDeriver.VERSION + "/" + Hands.version(store.captures(), capture);
    }

    private DayDeriver.Source source(CaptureRow capture) {
        // Asked first: what arrives while it is read makes it stale again, and nothing is missed.
        String extent = store.captures().extent(capture.id());
        return new DayDeriver.Source(capture, extent, reader.read(capture), version(capture));
    }

    private void keep(DerivedRows rows) {
        if (store.isWritable()) {
            store.derivations().replace(rows);
            return;
        }
        rows.captures().forEach(row -> capturesInMemory.put(row.captureId(), row));
        for (LocalDate day : rows.days()) {
            solvesInMemory.put(
                    day,
                    rows.solves().stream()
                            .filter(solve -> solve.row().day().equals(day))
                            .toList());
            nightsInMemory.remove(day);
        }
        rows.nights().forEach(night -> nightsInMemory.put(night.day(), night));
    }

    private Optional<DerivationRow> capture(long captureId) {
        return Optional.ofNullable(capturesInMemory.get(captureId))
                .or(() -> store.derivations().find(captureId));
    }

    synchronized List<DerivationRow> captures() {
        return store.captures().all().stream()
                .flatMap(capture -> capture(capture.id()).stream())
                .toList();
    }

    synchronized List<SolveRow> solves() {
        List<SolveRow> solves = new ArrayList<>();
        for (SolveRow stored : store.derivations().solves()) {
            if (!solvesInMemory.containsKey(stored.day())) {
                solves.add(stored);
            }
        }
        solvesInMemory.values().forEach(day -> day.forEach(solve -> solves.add(solve.row())));
        solves.sort(OLDEST_FIRST);
        return solves;
    }

    synchronized List<SolveRow> solves(LocalDate day) {
        List<SolveDocument> inMemory = solvesInMemory.get(day);
        return inMemory != null
                ? inMemory.stream().map(SolveDocument::row).toList()
                : store.derivations().solves(day);
    }

    synchronized Optional<SolveDocument> solve(String id) {
        for (List<SolveDocument> day : solvesInMemory.values()) {
            for (SolveDocument solve : day) {
                if (solve.row().id().equals(id)) {
                    return Optional.of(solve);
                }
            }
        }
        return store.derivations()
                .solve(id)
                .filter(solve -> !solvesInMemory.containsKey(solve.row().day()));
    }

    synchronized Optional<NightRow> night(LocalDate day) {
        return solvesInMemory.containsKey(day)
                ? Optional.ofNullable(nightsInMemory.get(day))
                : store.derivations().night(day);
    }

    synchronized List<NightRow> nights() {
        Map<LocalDate, NightRow> nights = new TreeMap<>();
        store.derivations().nights().stream()
                .filter(night -> !solvesInMemory.containsKey(night.day()))
                .forEach(night -> nights.put(night.day(), night));
        nights.putAll(nightsInMemory);
        return List.copyOf(nights.values());
    }
}
