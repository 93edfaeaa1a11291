package fermata.analysis.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.hotspot.HotspotKey;
import fermata.analysis.hotspot.Loss;
import fermata.analysis.hotspot.RankedHotspot;
import fermata.analysis.hotspot.Series;
import fermata.analysis.night.NightReport.FigureTrend;
import fermata.analysis.night.NightReport.OtherSeries;
import fermata.analysis.night.SolveAccount.StageTime;
import fermata.analysis.record.Method;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.Result;
import fermata.analysis.record.StageName;
import fermata.analysis.rest.Cause;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NightLedgerTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 24);
    private static final long SECOND = 1_000_000;
    private static final Series LEFT = series("galley", Hand.LEFT, Method.CFOP, false);

    private int made;
    private long clock;

    @Test
    void shouldRankPlacesOfTheLargestSeriesAndShowTheOthersApart() {
        NightLedger ledger = new NightLedger(DAY);
        for (int solve = 0; solve < 8; solve++) {
            add(ledger, DAY, solve(LEFT, 20 * SECOND, 400_000));
        }
        for (int solve = 0; solve < 3; solve++) {
            add(ledger, DAY, solve(series("galley", Hand.TWO, Method.CFOP, false), 12 * SECOND, 9_000_000));
        }
        add(ledger, DAY, solve(series("galley", Hand.LEFT, Method.CFOP, true), 99 * SECOND, 9_000_000));
        add(ledger, DAY, solve(series("spare", Hand.LEFT, Method.CFOP, false), 30 * SECOND, 9_000_000));

        NightReport report = report(ledger);

        assertThat(report.series()).isEqualTo(LEFT);
        assertThat(report.figures().solves()).isEqualTo(8);
        assertThat(report.figures().mean()).isEqualTo(new Result.Time(20 * SECOND));
        assertThat(report.places().byChange().ranked()).singleElement().satisfies(spot -> {
            assertThat(spot.key())
                    .isEqualTo(new HotspotKey(
                            Optional.of(StageName.CROSS), Optional.of(StageName.PAIR1), "", Optional.empty(), ""));
            assertThat(spot.perSolveMicros()).isCloseTo(400_000, within(1e-6));
            assertThat(spot.occurrences()).isEqualTo(8);
        });
        assertThat(report.others()).extracting(OtherSeries::solves).containsExactly(3, 1, 1);
        assertThat(report.others()).extracting(other -> other.series().hand()).startsWith(Hand.TWO);
    }

    @Test
    void shouldCountEveryMethodAndEveryAbandonedAttemptInTheFigures() {
        NightLedger ledger = new NightLedger(DAY);
        for (int solve = 0; solve < 4; solve++) {
            add(ledger, DAY, solve(LEFT, (20 + solve) * SECOND, 400_000));
        }
        add(ledger, DAY, solve(series("galley", Hand.LEFT, Method.OTHER, false), 40 * SECOND, 0));
        Series untold = series("galley", Hand.LEFT, Method.UNTOLD, false);
        add(ledger, DAY, account(untold, Outcome.ABANDONED, 5 * SECOND, 0));
        add(ledger, DAY, account(untold, Outcome.UNKNOWN_AFTER_GAP, 5 * SECOND, 0));
        add(ledger, DAY, account(untold, Outcome.SOLVED, Event.NO_TIME, 0));

        NightReport report = report(ledger);

        assertThat(report.figures().solves()).isEqualTo(5);
        assertThat(report.figures().abandoned()).isEqualTo(1);
        // 21, 22, 23, 40, DNF: best and worst left out (WCA 9f8, 9f9): (22 + 23 + 40) / 3.
        assertThat(report.figures().average5().latest()).isEqualTo(new Result.Time(28_330_000));
        assertThat(report.stages())
                .singleElement()
                .satisfies(stage -> assertThat(stage.medianMicros()).isEqualTo(2 * SECOND));
        assertThat(report.others()).extracting(other -> other.series().method()).containsExactly(Method.OTHER);
    }

    @Test
    void shouldLetNightsBeforeItSpeakInTheTrendsOnly() {
        NightLedger ledger = new NightLedger(DAY);
        for (int night = 0; night < 10; night++) {
            for (int solve = 0; solve < 6; solve++) {
                long lost = 900_000 - 50_000L * night;
                add(ledger, DAY.minusDays(9 - night), solve(LEFT, 20 * SECOND + lost, lost));
            }
        }

        NightReport report = report(ledger);

        assertThat(report.nights()).isEqualTo(1);
        assertThat(report.figures().solves()).isEqualTo(6);
        assertThat(report.load().solves()).isEqualTo(6);
        assertThat(trend(report, "look-ahead")).isInstanceOfSatisfying(Trend.Moves.class, moves -> {
            assertThat(moves.perDay()).isCloseTo(-50_000, within(1e-3));
            assertThat(moves.nights()).isEqualTo(10);
        });
        assertThat(trend(report, "time")).isInstanceOf(Trend.Moves.class);
        assertThat(trend(report, "regrip")).isInstanceOf(Trend.NoneSeen.class);
    }

    @ParameterizedTest
    @CsvSource({"old, LEFT, CFOP", "galley, RIGHT, CFOP", "galley, TWO, CFOP", "galley, LEFT, ROUX"})
    void shouldBeginTheTrendAnewWhenCubeHandOrMethodChanged(String cube, Hand hand, Method method) {
        NightLedger ledger = new NightLedger(DAY);
        for (int night = 0; night < 10; night++) {
            Series series = night < 8 ? series(cube, hand, method, false) : LEFT;
            for (int solve = 0; solve < 6; solve++) {
                add(ledger, DAY.minusDays(9 - night), solve(series, 20 * SECOND, 300_000));
            }
        }

        assertThat(trend(report(ledger), "time")).isEqualTo(new Trend.TooFew(2, Trend.NIGHTS_NEEDED));
    }

    @Test
    void shouldLeaveNightsOfOneOrTwoSolvesOutOfTheTrend() {
        NightLedger ledger = new NightLedger(DAY);
        for (int night = 0; night < 8; night++) {
            for (int solve = 0; solve < (night == 2 ? 4 : 5); solve++) {
                add(ledger, DAY.minusDays(7 - night), solve(LEFT, 20 * SECOND, 300_000));
            }
        }

        assertThat(trend(report(ledger), "time"))
                .isInstanceOfSatisfying(
                        Trend.NoneSeen.class, none -> assertThat(none.nights()).isEqualTo(7));
    }

    @Test
    void shouldShareTheLossesOfAChangeOutByCauseAndGiveTheSameForTheSameSeed() {
        NightReport one = report(mixed());
        NightReport other = report(mixed());

        double change = one.places().byChange().ranked().get(0).perSolveMicros();
        double causes = one.perSolveMicros().values().stream()
                .mapToDouble(micros -> micros)
                .sum();
        assertThat(causes).isCloseTo(change, within(1e-6));
        assertThat(one.places().byCause().ranked())
                .extracting(RankedHotspot::interval)
                .isEqualTo(other.places().byCause().ranked().stream()
                        .map(RankedHotspot::interval)
                        .toList());
    }

    @Test
    void shouldSayNothingWhenThereWasNoPractice() {
        assertThat(new NightLedger(DAY).report(new SplittableRandom(1))).isEmpty();
    }

    private NightLedger mixed() {
        NightLedger ledger = new NightLedger(DAY);
        for (int solve = 0; solve < 12; solve++) {
            SolveAccount looking = solve(LEFT, 20 * SECOND, 500_000 + 10_000 * solve);
            add(ledger, DAY, looking);
            add(ledger, DAY, withCause(looking, "regrip"));
        }
        return ledger;
    }

    private static SolveAccount withCause(SolveAccount solve, String cause) {
        Loss loss = solve.losses().get(0);
        HotspotKey key = new HotspotKey(
                loss.key().before(),
                loss.key().after(),
                "",
                Optional.of(Cause.of(cause)),
                loss.key().hold());
        return new SolveAccount(
                solve.solveId(),
                solve.series(),
                solve.outcome(),
                solve.timeMicros(),
                solve.turns(),
                solve.regrips(),
                solve.stages(),
                List.of(new Loss(key, solve.solveId(), 7, loss.atMicros(), loss.micros(), 0.9)),
                List.of());
    }

    private static Trend trend(NightReport report, String figure) {
        return report.trends().stream()
                .filter(one -> one.figure().equals(figure))
                .map(FigureTrend::trend)
                .findFirst()
                .orElseThrow();
    }

    private static NightReport report(NightLedger ledger) {
        return ledger.report(new SplittableRandom(1)).orElseThrow();
    }

    private void add(NightLedger ledger, LocalDate day, SolveAccount account) {
        clock += 60 * SECOND;
        ledger.add(day, day.toEpochDay() * 86_400 * SECOND + clock, account);
    }

    private SolveAccount solve(Series series, long timeMicros, long lostMicros) {
        return account(series, Outcome.SOLVED, timeMicros, lostMicros);
    }

    private SolveAccount account(Series series, Outcome outcome, long timeMicros, long lostMicros) {
        String id = "1-" + 100 * made++;
        HotspotKey key = new HotspotKey(
                Optional.of(StageName.CROSS), Optional.of(StageName.PAIR1), "", Optional.of(Cause.LOOK_AHEAD), "DF");
        boolean hasStages = series.method() == Method.CFOP && outcome == Outcome.SOLVED;
        return new SolveAccount(
                id,
                series,
                outcome,
                timeMicros,
                60,
                2,
                hasStages ? List.of(new StageTime(StageName.CROSS, 2 * SECOND)) : List.of(),
                lostMicros > 0 ? List.of(new Loss(key, id, 7, 2 * SECOND, lostMicros, 0.9)) : List.of(),
                List.of());
    }

    private static Series series(String cube, Hand hand, Method method, boolean isSetAside) {
        return new Series("cook", cube, hand, method, isSetAside);
    }
}
