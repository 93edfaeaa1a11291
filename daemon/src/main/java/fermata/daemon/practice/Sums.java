package fermata.daemon.practice;

import fermata.analysis.casebook.CaseLedger;
import fermata.analysis.hotspot.Series;
import fermata.analysis.night.NightLedger;
import fermata.analysis.night.SolveAccount;
import fermata.daemon.document.CaseViews;
import fermata.daemon.document.NightViews;
import fermata.daemon.json.CasesView;
import fermata.daemon.json.Json;
import fermata.daemon.json.NightDocument;
import fermata.daemon.json.NightView;
import fermata.daemon.json.Over;
import fermata.daemon.json.WrittenDay;
import fermata.daemon.store.AccountRow;
import fermata.daemon.store.NightRow;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.BiConsumer;

/**
 * Adds up the accounts of one practice day or of many, with one day's accounts in memory at a time. The same accounts
 * give the same sums. Not thread-safe.
 */
final class Sums {
    /** Trends look back so many days, however few are summed up. */
    static final int TREND_DAYS = 28;

    private static final long MICROS_PER_MILLI = 1000;

    private final Derived derived;
    private final List<NightRow> nights;

    Sums(Derived derived) {
        this.derived = derived;
        this.nights = derived.nights();
    }

    /**
     * The days up to one; empty if there was no practice on it. Nothing is up to an unknown day: it stands alone.
     */
    Optional<NightView> night(LocalDate day, Over asked) {
        Over over = day.equals(WrittenDay.UNKNOWN) ? Over.NIGHT : asked;
        return derived.night(day).flatMap(row -> {
            LocalDate from = over.from(day, nights.get(0).day());
            LocalDate trendsFrom = day.minusDays(TREND_DAYS - 1);
            NightLedger ledger = new NightLedger(from);
            forEach(
                    from.isBefore(trendsFrom) ? from : trendsFrom,
                    day,
                    (kept, account) ->
                            ledger.add(kept.day(), kept.startedAt().toEpochMilli() * MICROS_PER_MILLI, account));
            NightDocument document = Json.read(row.json(), NightDocument.class);
            return ledger.report(new SplittableRandom(day.toEpochDay()))
                    .map(report -> NightViews.view(report, over, from, day, document.derived()));
        });
    }

    /** The cases of the days up to the last one with practice, in the series with the most solves. */
    CasesView cases(Over over) {
        if (nights.isEmpty()) {
            return CaseViews.none(over);
        }
        LocalDate to = last(over);
        LocalDate from = over.from(to, nights.get(0).day());
        Map<Series, CaseLedger> ledgers = new LinkedHashMap<>();
        forEach(from, to, (kept, account) -> {
            if (kept.isSolvedAndTimed()) {
                ledgers.computeIfAbsent(account.series(), series -> new CaseLedger())
                        .add(account.solveId(), account.cases());
            }
        });
        Map<Series, Integer> solves = new LinkedHashMap<>();
        ledgers.forEach((series, ledger) -> solves.put(series, ledger.solves()));
        return CaseViews.view(over, from, to, Series.mostPractised(solves), ledgers);
    }

    /** A week ends on a day of the calendar, if there is one. */
    private LocalDate last(Over over) {
        int last = nights.size() - 1;
        boolean isOfNoWeek =
                over != Over.ALL && last > 0 && nights.get(last).day().equals(WrittenDay.UNKNOWN);
        return nights.get(isOfNoWeek ? last - 1 : last).day();
    }

    private void forEach(LocalDate from, LocalDate to, BiConsumer<AccountRow, SolveAccount> taker) {
        AccountRows reader = new AccountRows();
        nights.stream()
                .map(NightRow::day)
                .filter(day -> !day.isBefore(from) && !day.isAfter(to))
                .forEach(day -> derived.accounts(day).forEach(row -> taker.accept(row, reader.read(row))));
    }
}
