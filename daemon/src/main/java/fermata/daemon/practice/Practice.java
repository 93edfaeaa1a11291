package fermata.daemon.practice;

import fermata.analysis.event.Event;
import fermata.daemon.json.CasesView;
import fermata.daemon.json.Json;
import fermata.daemon.json.NightDocument;
import fermata.daemon.json.NightView;
import fermata.daemon.json.NightsView;
import fermata.daemon.json.Over;
import fermata.daemon.json.PracticeReader;
import fermata.daemon.json.SequencesView;
import fermata.daemon.json.SolveView;
import fermata.daemon.json.SolvesView;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.reading.CaptureReader;
import fermata.daemon.store.CaptureRow;
import fermata.daemon.store.DerivationRow;
import fermata.daemon.store.RowCheck;
import fermata.daemon.store.SolveDocument;
import fermata.daemon.store.SolveRow;
import fermata.daemon.store.Store;
import fermata.daemon.store.UnreadableDerivationException;
import fermata.daemon.telling.OwnSequences;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import tools.jackson.core.JacksonException;

/**
 * The practice as it is shown: every question first sees to it that what was heard since is derived too.
 *
 * <p>Safe for use by many threads; one at a time derives. Where the store cannot be written (another process listens,
 * or the medium is read-only) what is missing is derived in memory and the answers are the same.
 */
public final class Practice implements PracticeReader {
    private final Store store;
    private final Derived derived;
    private final LearnedHabits habits = new LearnedHabits();
    private final RenewalListener listener;

    /** Over a store, which the caller closes. */
    public Practice(Store store) {
        this(store, RenewalListener.SILENT);
    }

    /** The same, telling somebody when much is to be derived again. */
    public Practice(Store store, RenewalListener listener) {
        this.store = store;
        this.listener = listener;
        this.derived = new Derived(store);
    }

    /** Whether something was heard, or the program renewed, since the results were derived. */
    public boolean isStale() {
        return asked(() -> {
            synchronized (derived) {
                return new Renewal(store, derived, habits).isNeeded();
            }
        });
    }

    /** Compares all that was heard and told with its checksums; the store's warnings name what is not as it was. */
    public void checkRows(RowCheck.Progress progress) {
        store.rowCheck().run(progress);
    }

    /** Asks, and asks again after what could not be read of the derived was thrown away: at last all of it. */
    private <T> T asked(Supplier<T> question) {
        while (true) {
            try {
                return question.get();
            } catch (UnreadableDerivationException e) {
                if (!derived.forget(e)) {
                    throw e;
                }
            } catch (JacksonException e) {
                // It was kept as it is by a program that wrote otherwise.
                if (!derived.forget(new UnreadableDerivationException(Optional.empty(), e.getMessage(), e))) {
                    throw e;
                }
            }
        }
    }

    /** Derives what is not derived yet, was derived by another version, or began from a rhythm that has changed. */
    public void refresh() {
        asked(() -> {
            renew();
            return true;
        });
    }

    private void renew() {
        synchronized (derived) {
            new Renewal(store, derived, habits).run(listener);
        }
    }

    private <T> T fresh(Supplier<T> question) {
        return asked(() -> {
            renew();
            return question.get();
        });
    }

    /** All solves, oldest first. */
    public SolvesView solves() {
        return fresh(() -> new SolvesView(numbered(derived.solves().stream()
                .map(row -> Json.read(row.summary(), SolvesView.Item.class))
                .toList())));
    }

    /** The solves of one practice day, oldest first. */
    public SolvesView solves(LocalDate day) {
        return fresh(() -> new SolvesView(numbered(derived.solves(day).stream()
                .map(row -> Json.read(row.summary(), SolvesView.Item.class))
                .toList())));
    }

    private static List<SolvesView.Item> numbered(List<SolvesView.Item> items) {
        List<SolvesView.Item> numbered = new ArrayList<>();
        String day = "";
        int number = 0;
        for (SolvesView.Item item : items) {
            number = item.day().equals(day) ? number + 1 : 1;
            day = item.day();
            numbered.add(item.numbered(number));
        }
        return numbered;
    }

    /** One solve. */
    public Optional<SolveView> solve(String id) {
        return fresh(() -> derived.solve(id).map(this::placed));
    }

    /**
     * One solve as it reads with another margin for looking ahead. Cost: its whole day is derived again.
     *
     * @param marginMicros so long before it is needed a pair must be identifiable, 0 or more
     */
    public Optional<SolveView> solve(String id, long marginMicros) {
        return fresh(() -> {
            synchronized (derived) {
                return derived.solve(id).stream()
                        .map(solve -> solve.row().day())
                        .flatMap(day -> new Renewal(store, derived, habits).again(day, marginMicros).stream())
                        .filter(solve -> solve.row().id().equals(id))
                        .findFirst()
                        .map(this::placed);
            }
        });
    }

    private SolveView placed(SolveDocument solve) {
        String id = solve.row().id();
        List<String> ids =
                derived.solves(solve.row().day()).stream().map(SolveRow::id).toList();
        SolveView.Usual usual = derived.accounts(solve.row().day()).stream()
                .filter(account -> account.solveId().equals(id))
                .findFirst()
                .flatMap(account -> UsualTimes.of(derived.accountsBefore(account, UsualTimes.MOST_SOLVES)))
                .orElse(null);
        return Json.read(solve.json(), SolveView.class).placed(ids.indexOf(id) + 1, usual);
    }

    /** The practice days up to one; empty if there was no practice on it. */
    public Optional<NightView> night(LocalDate day, Over over) {
        return fresh(() -> new Sums(derived).night(day, over));
    }

    /** The cases that were met on the practice days up to the last one. */
    public CasesView cases(Over over) {
        return fresh(() -> new Sums(derived).cases(over));
    }

    /**
     * The last-layer sequences of a solver: typed, from solves that were set right, and what the others repeat as far
     * as they are derived. Derives nothing: much would be derived again just after a list was typed.
     */
    public SequencesView sequences(String solver) {
        return asked(() -> new OwnSequences(store.captures()).view(solver, RepeatedSequences.listed(derived, solver)));
    }

    /** The practice days, newest first; that of an unknown date last, unless it was practised after all others. */
    public NightsView nights() {
        return fresh(this::listed);
    }

    private NightsView listed() {
        List<NightsView.Item> items = new ArrayList<>();
        for (var row : derived.nights()) {
            items.add(Json.read(row.json(), NightDocument.class).figures());
        }
        Collections.reverse(items);
        if (items.size() > 1 && items.get(0).day().equals(WrittenDay.UNKNOWN_WORD) && !isNewest(items)) {
            Collections.rotate(items, -1);
        }
        return new NightsView(items);
    }

    /** Whether the first of these days has the capture that was begun last. */
    private boolean isNewest(List<NightsView.Item> items) {
        return newestCapture(items.get(0)) > newestCapture(items.get(1));
    }

    private long newestCapture(NightsView.Item item) {
        return derived.solves(WrittenDay.parse(item.day())).stream()
                .mapToLong(SolveRow::captureId)
                .max()
                .orElse(0);
    }

    /** What was derived from each capture, in the order of the captures. */
    public List<DerivationRow> derivations() {
        return fresh(derived::captures);
    }

    /** The events of a capture, read again from what is kept of it. */
    public List<Event> events(CaptureRow capture) {
        return new CaptureReader(store.captures()).read(capture).log().events();
    }

    /** The solves that begin in these captures, oldest first, by their ids. */
    public List<String> solvesOf(List<Long> captureIds) {
        return fresh(() -> derived.solves().stream()
                .filter(solve -> captureIds.contains(solve.captureId()))
                .map(SolveRow::id)
                .toList());
    }

    @Override
    public String nightsJson() {
        return Json.write(nights());
    }

    @Override
    public Optional<String> nightJson(LocalDate day, Over over) {
        return night(day, over).map(Json::write);
    }

    @Override
    public String casesJson(Over over) {
        return Json.write(cases(over));
    }

    @Override
    public String solvesJson() {
        return Json.write(solves());
    }

    @Override
    public String solvesJson(LocalDate day) {
        return Json.write(solves(day));
    }

    @Override
    public Optional<String> solveJson(String id) {
        return solve(id).map(Json::write);
    }
}
