package fermata.daemon.practice;

import fermata.analysis.lookahead.LookAhead;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.reading.CaptureReader;
import fermata.daemon.reading.PracticeDay;
import fermata.daemon.reading.Source;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.CaptureStart;
import fermata.daemon.store.DerivationRow;
import fermata.daemon.store.SolveDocument;
import fermata.daemon.store.SolveRow;
import fermata.daemon.store.Store;
import java.time.LocalDate;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Derives again what is stale, one practice day after the other, oldest first: the days of captures that grew or were
 * read by another version, and the days that began from another rhythm than they would now. Each day is kept before
 * the next begins, so that what was done stays done when the program is ended.
 *
 * <p>Holds the captures of one day in memory. One use; not thread-safe.
 */
final class Renewal {
    private static final Comparator<CaptureRow> OLDEST_FIRST =
            Comparator.comparing(Renewal::firstDay).thenComparing(CaptureRow::id);

    private final Store store;
    private final CaptureReader reader;
    private final Derived derived;
    private final LearnedHabits habits;
    private final RhythmChain chain;
    private final Rhythms rhythms;
    private final Deque<CaptureRow> unread;
    private final TreeSet<LocalDate> days = new TreeSet<>();
    /** Days that solves left when the date of their capture was set right: cleared first, so that no solve is twice. */
    private final TreeSet<LocalDate> vacated = new TreeSet<>();

    private final Map<Long, Source> sources = new TreeMap<>();
    /** Of each stale capture that was read: the days that are still to be derived. */
    private final Map<Long, Set<LocalDate>> left = new HashMap<>();

    Renewal(Store store, Derived derived, LearnedHabits habits) {
        this.store = store;
        this.reader = new CaptureReader(store.captures());
        this.derived = derived;
        this.habits = habits;
        this.chain = new RhythmChain(derived.rhythms());
        this.rhythms = new Rhythms(derived::snapshot);
        this.unread = new ArrayDeque<>(store.captures().all().stream()
                .filter(this::isStale)
                .sorted(OLDEST_FIRST)
                .toList());
        days.addAll(chain.broken());
    }

    /** Whether there is anything to do. */
    boolean isNeeded() {
        return !unread.isEmpty() || !days.isEmpty();
    }

    /** Does it. */
    void run(RenewalListener listener) {
        if (!isNeeded()) {
            // The learned model is not read for nothing.
            return;
        }
        Hands hands = new Hands(store.captures(), reader, habits, derived);
        int done = 0;
        while (isNeeded()) {
            readAhead();
            if (!days.isEmpty()) {
                LocalDate day = vacated.isEmpty() ? days.first() : vacated.first();
                vacated.remove(day);
                days.remove(day);
                listener.begins(day, done++, days.size() + unread.size());
                derive(day, hands);
                days.addAll(chain.broken());
            }
        }
    }

    /** Reads the captures that may have attempts on the next day. None has any before the day on which it began. */
    private void readAhead() {
        while (!unread.isEmpty() && (days.isEmpty() || !firstDay(unread.peek()).isAfter(days.first()))) {
            Source source = source(unread.poll());
            Set<LocalDate> own = new HashSet<>(source.days());
            Set<LocalDate> before = derived.days(source.row().id());
            before.stream().filter(day -> !own.contains(day)).forEach(vacated::add);
            own.addAll(before);
            if (own.isEmpty()) {
                derived.keepCaptures(List.of(source.derivation()));
            } else {
                sources.put(source.row().id(), source);
                left.put(source.row().id(), own);
                days.addAll(own);
            }
        }
    }

    private void derive(LocalDate day, Hands hands) {
        // A day is learned from as a whole, so its other captures are read too.
        for (SolveRow solve : derived.solves(day)) {
            // A capture whose own row was altered on the disk is left out, and named elsewhere.
            if (!sources.containsKey(solve.captureId())) {
                store.captures().find(solve.captureId()).ifPresent(row -> sources.put(row.id(), source(row)));
            }
        }
        List<DerivationRow> finished = new ArrayList<>();
        left.forEach((id, open) -> {
            if (open.remove(day) && open.isEmpty()) {
                finished.add(sources.get(id).derivation());
            }
        });
        var rows = DayDeriver.derive(
                day, List.copyOf(sources.values()), chain, rhythms, hands, finished, LookAhead.MARGIN_MICROS);
        derived.keep(day, rows);
        chain.replace(day, rows.rhythms());
        left.values().removeIf(Set::isEmpty);
        sources.keySet().retainAll(left.keySet());
    }

    /**
     * The documents of a day that is derived already, by another margin for looking ahead. Nothing of it is kept.
     *
     * @param marginMicros so long before it is needed a pair must be identifiable
     */
    List<SolveDocument> again(LocalDate day, long marginMicros) {
        List<Source> ofDay = derived.solves(day).stream()
                .map(SolveRow::captureId)
                .distinct()
                .flatMap(id -> store.captures().find(id).stream())
                .map(this::source)
                .toList();
        Hands hands = new Hands(store.captures(), reader, habits, derived);
        return DayDeriver.derive(day, ofDay, chain, rhythms, hands, List.of(), marginMicros)
                .solves();
    }

    private boolean isStale(CaptureRow capture) {
        return derived.capture(capture.id())
                .filter(row -> row.codeVersion().equals(version(capture))
                        && row.extent().equals(store.captures().extent(capture.id())))
                .isEmpty();
    }

    private String version(CaptureRow capture) {
        CaptureStart start = capture.start();
        String began = start.isDated() ? Long.toString(start.startedWall().toEpochMilli()) : WrittenDay.UNKNOWN_WORD;
        return DayDeriver.VERSION + "/" + Hands.version(store.captures(), capture) + "/" + began;
    }

    private Source source(CaptureRow capture) {
        // Asked first: what arrives while it is read makes it stale again, and nothing is missed.
        String extent = store.captures().extent(capture.id());
        return Source.of(capture, extent, reader.read(capture), version(capture));
    }

    private static LocalDate firstDay(CaptureRow capture) {
        CaptureStart start = capture.start();
        return start.isDated() ? PracticeDay.of(start.startedWall(), start.zone()) : WrittenDay.UNKNOWN;
    }
}
