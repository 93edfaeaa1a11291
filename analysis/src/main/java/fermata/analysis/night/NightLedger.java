package fermata.analysis.night;

import fermata.analysis.event.Hand;
import fermata.analysis.hotspot.Grouping;
import fermata.analysis.hotspot.Hotspots;
import fermata.analysis.hotspot.Series;
import fermata.analysis.load.LoadLedger;
import fermata.analysis.night.NightReport.OtherSeries;
import fermata.analysis.record.Method;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.Result;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.random.RandomGenerator;

/**
 * Adds up practice, attempt after attempt in the order in which they were made, without keeping them: one night or a
 * year. Not thread-safe.
 */
public final class NightLedger {
    /** So many of the finer places are given. */
    private static final int MOST_FINE = 12;

    private record Player(String solver, Hand hand) {
        static Player of(Series series) {
            return new Player(series.solver(), series.hand());
        }
    }

    private final LocalDate from;
    private final Map<Series, SeriesLedger> counted = new LinkedHashMap<>();
    private final Map<Series, NightTrends> trends = new LinkedHashMap<>();
    private final Map<Series, List<Result>> results = new LinkedHashMap<>();
    private final Map<Player, LoadLedger> loads = new LinkedHashMap<>();
    private final Set<LocalDate> nights = new HashSet<>();

    /**
     * An empty ledger.
     *
     * @param from the first day that counts; attempts of days before it show in the trends alone
     */
    public NightLedger(LocalDate from) {
        this.from = Objects.requireNonNull(from, "from");
    }

    /**
     * Adds an attempt; they come in the order in which they were made.
     *
     * @param day its practice day
     * @param startedMicros when its first turn came, microseconds since any moment that all attempts share
     */
    public void add(LocalDate day, long startedMicros, SolveAccount account) {
        boolean isCounted = !day.isBefore(from);
        boolean isSolved = account.isSolved() && account.isTimed();
        if (isSolved) {
            trends.computeIfAbsent(account.series(), series -> new NightTrends())
                    .add(day.toEpochDay(), account);
        }
        if (!isCounted) {
            return;
        }
        nights.add(day);
        SeriesLedger ledger = counted.computeIfAbsent(account.series(), series -> new SeriesLedger());
        if (isSolved) {
            ledger.add(day.toEpochDay(), account);
        }
        loads.computeIfAbsent(Player.of(account.series()), player -> new LoadLedger())
                .add(startedMicros, account.isTimed() ? account.timeMicros() : 0, account.turns(), account.regrips());
        if (account.isTimed() && account.outcome() != Outcome.UNKNOWN_AFTER_GAP) {
            Result result = isSolved ? new Result.Time(account.timeMicros()) : new Result.Dnf();
            results.computeIfAbsent(anyMethod(account.series()), series -> new ArrayList<>())
                    .add(result);
        }
    }

    private static Series anyMethod(Series series) {
        return new Series(series.solver(), series.cube(), series.hand(), Method.UNTOLD, series.isSetAside());
    }

    /**
     * What there is to say; empty if no attempt counted. May be asked once.
     *
     * @param random for the intervals; the same seed gives the same ones
     */
    public Optional<NightReport> report(RandomGenerator random) {
        return main().map(series -> report(series, random));
    }

    /** The figures alone, as the report has them. */
    public NightFigures figures() {
        return NightFigures.of(main().map(this::resultsOf).orElse(List.of()));
    }

    private Optional<Series> main() {
        // In the order in which they came, so that of two equals it is always the same one.
        Map<Series, Integer> solves = new LinkedHashMap<>();
        counted.forEach((series, ledger) -> solves.put(series, ledger.solves()));
        return Series.mostPractised(solves);
    }

    private List<Result> resultsOf(Series series) {
        return results.getOrDefault(anyMethod(series), List.of());
    }

    private NightReport report(Series series, RandomGenerator random) {
        SeriesLedger ledger = counted.get(series);
        return new NightReport(
                nights.size(),
                series,
                NightFigures.of(resultsOf(series)),
                ledger.stages(),
                new NightReport.Places(
                        rank(ledger, Grouping.TRANSITION, Integer.MAX_VALUE, random),
                        rank(ledger, Grouping.CAUSE, Integer.MAX_VALUE, random),
                        rank(ledger, Grouping.TRANSITION_AND_CAUSE, MOST_FINE, random),
                        rank(ledger, Grouping.ALL, MOST_FINE, random)),
                ledger.places(Grouping.TRANSITION_AND_CAUSE).perSolveMicros(),
                trends.getOrDefault(series, new NightTrends()).trends(),
                loads.get(Player.of(series)).load(),
                others(series));
    }

    private static Hotspots rank(SeriesLedger ledger, Grouping grouping, int most, RandomGenerator random) {
        return ledger.places(grouping).rank(most, random);
    }

    private List<OtherSeries> others(Series main) {
        List<OtherSeries> others = new ArrayList<>();
        counted.forEach((series, ledger) -> {
            // An abandoned attempt has no method and stands in the figures already.
            if (!series.equals(main) && ledger.solves() > 0) {
                others.add(new OtherSeries(series, ledger.solves(), ledger.meanMicros()));
            }
        });
        others.sort(Comparator.comparingInt(OtherSeries::solves).reversed());
        return others;
    }
}
