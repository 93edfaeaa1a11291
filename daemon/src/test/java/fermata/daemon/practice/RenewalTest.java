package fermata.daemon.practice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.hold.sequence.SequenceReading;
import fermata.analysis.night.SolveAccount;
import fermata.analysis.rest.Rhythm;
import fermata.daemon.demo.Rehearsal;
import fermata.daemon.json.Json;
import fermata.daemon.json.SolveView;
import fermata.daemon.json.SolvesView;
import fermata.daemon.store.AccountRow;
import fermata.daemon.store.Home;
import fermata.daemon.store.RhythmRow;
import fermata.daemon.store.Store;
import fermata.daemon.telling.Importer;
import fermata.daemon.turnfile.PracticeFile;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.CoreStep;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rehearsed evenings in a real store, derived as they come and again. */
class RenewalTest {
    private static final LocalDate FIRST = LocalDate.of(2026, 11, 20);

    @TempDir
    Path directory;

    private Store store;
    private final List<LocalDate> derived = new ArrayList<>();

    @BeforeEach
    void open() {
        store = Store.openForWriting(new Home(directory), LocalDateTime::now);
    }

    @AfterEach
    void close() {
        store.close();
    }

    @Test
    void shouldBeginEachDayFromTheRhythmOfTheDayBeforeAndFreezeItsOwn() {
        bringIn(FIRST, 6, 1, "left");
        bringIn(FIRST.plusDays(3), 6, 2, "left");
        refresh();

        List<RhythmRow> rhythms = store.derivations().rhythms();
        assertThat(rhythms).hasSize(2);
        assertThat(rhythms.get(0).beganFrom()).isEqualTo(Rhythm.coldStart().id());
        assertThat(rhythms.get(1).beganFrom()).isEqualTo(rhythms.get(0).snapshotId());
        for (RhythmRow row : rhythms) {
            Rhythm frozen = Json.read(
                    store.derivations().snapshot(row.snapshotId()).orElseThrow().json(), Rhythm.class);
            assertThat(frozen.id()).isEqualTo(row.snapshotId());
            assertThat(frozen.beats().beats()).isPositive();
        }
        SolveView last = last();
        assertThat(last.derived().snapshot()).isEqualTo(rhythms.get(1).snapshotId());
        assertThat(last.derived().beganFrom()).isEqualTo(rhythms.get(0).snapshotId());
    }

    @Test
    void shouldDeriveLaterDaysAgainInOrderWhenAnOlderOneComesIn() {
        bringIn(FIRST.plusDays(1), 5, 2, "left");
        bringIn(FIRST.plusDays(2), 5, 3, "left");
        refresh();
        String before = last().derived().beganFrom();
        derived.clear();

        bringIn(FIRST, 5, 1, "left");
        assertThat(practice().isStale()).isTrue();
        refresh();

        assertThat(derived).containsExactly(FIRST, FIRST.plusDays(1), FIRST.plusDays(2));
        assertThat(last().derived().beganFrom()).isNotEqualTo(before);
        assertThat(practice().isStale()).isFalse();
        String after = practice().solvesJson() + Json.write(last());

        try (Store another = Store.openForWriting(new Home(directory.resolve("another")), LocalDateTime::now)) {
            // The ids of solves count captures, so they come in in the same order; all is derived at once.
            bringIn(another, FIRST.plusDays(1), 5, 2, "left");
            bringIn(another, FIRST.plusDays(2), 5, 3, "left");
            bringIn(another, FIRST, 5, 1, "left");
            Practice atOnce = new Practice(another);
            List<SolvesView.Item> solves = atOnce.solves().solves();
            String last = solves.get(solves.size() - 1).id();
            assertThat(atOnce.solvesJson() + Json.write(atOnce.solve(last).orElseThrow()))
                    .isEqualTo(after);
        }
    }

    @Test
    void shouldLeaveEarlierDaysAloneWhenALaterOneComesIn() {
        bringIn(FIRST, 5, 1, "left");
        refresh();
        derived.clear();
        bringIn(FIRST.plusDays(1), 5, 2, "left");
        refresh();

        assertThat(derived).containsExactly(FIRST.plusDays(1));
    }

    @Test
    void shouldGoOnWhereItWasEndedWhenManyDaysAreStale() {
        for (int day = 0; day < 4; day++) {
            bringIn(FIRST.plusDays(day), 4, 10 + day, "left");
        }
        try {
            new Practice(store, (day, done, left) -> {
                        if (done == 2) {
                            throw new IllegalStateException("the power went");
                        }
                    })
                    .refresh();
        } catch (IllegalStateException expected) {
            assertThat(expected).hasMessage("the power went");
        }
        refresh();

        assertThat(derived).containsExactly(FIRST.plusDays(2), FIRST.plusDays(3));
        assertThat(practice().isStale()).isFalse();
    }

    @Test
    void shouldKeepTheRhythmsOfTwoHandsApart() {
        bringIn(FIRST, 5, 1, "left");
        bringIn(FIRST, 5, 1, "two");
        bringIn(FIRST.plusDays(1), 5, 2, "left");
        refresh();

        assertThat(store.derivations().rhythms()).extracting(RhythmRow::hand).containsExactly("left", "two", "left");
        RhythmRow next = store.derivations().rhythms().get(2);
        assertThat(next.beganFrom())
                .isEqualTo(store.derivations().rhythms().get(0).snapshotId());
    }

    @Test
    void shouldGiveBackTheAccountsThatWereKept() {
        bringIn(FIRST, 8, 4, "left");
        refresh();
        List<AccountRow> rows = store.accounts().of(FIRST);
        AccountRows reader = new AccountRows();
        double lost = 0;

        assertThat(rows).hasSameSizeAs(practice().solves(FIRST).solves());
        for (AccountRow row : rows) {
            SolveAccount account = reader.read(row);
            SolveView shown = practice().solve(row.solveId()).orElseThrow();
            assertThat(account.turns()).isEqualTo(shown.turns().size());
            assertThat(account.series().method().written()).isEqualTo(shown.method());
            assertThat(account.stages()).hasSameSizeAs(shown.stages());
            // What a slip cost stands where most of it was lost.
            List<SolveView.Rest> others = shown.rests().stream()
                    .filter(rest -> shown.slips().stream()
                            .noneMatch(slip -> slip.from() <= rest.afterTurn() && rest.afterTurn() < slip.to()))
                    .toList();
            for (SolveView.Rest rest : others) {
                double losses = account.losses().stream()
                        .filter(loss -> loss.afterTurn() == rest.afterTurn())
                        .mapToDouble(loss -> loss.micros())
                        .sum();
                // All causes of a beat together lose its excess times its probability; shares under 1 ms are left out.
                assertThat(losses).isCloseTo(rest.p() * rest.excessUs(), within(10_000.0));
                lost += losses;
            }
        }
        assertThat(lost).isPositive();
    }

    @Test
    void shouldReadAHandsSolvesAgainWhenItsDrillIsKept() {
        bringIn(FIRST, 5, 1, "left");
        bringIn(FIRST.plusDays(1), 5, 2, "right");
        refresh();
        derived.clear();
        SolveView before =
                practice().solve(practice().solves(FIRST).solves().get(0).id()).orElseThrow();

        add(store, """
                {"format":"turn-stream","version":1,"clock":"device","hand":"left","solver":"cook",\
                "started_at":"2026-11-22T18:30:00Z"}
                {"turn":"R","at":0}
                {"calibration":"left","times":[{"kind":"fluent","count":90,"median_us":240000},\
                {"kind":"regrip","count":24,"median_us":1900000},{"kind":"rotation","count":16,"median_us":2900000}],\
                "at":1}
                """);
        refresh();

        SolveView after = practice().solve(before.id()).orElseThrow();
        assertThat(derived).startsWith(FIRST).doesNotContain(FIRST.plusDays(1));
        assertThat(after.regripCount().expected())
                .isNotEqualTo(before.regripCount().expected());
        assertThat(after.turns()).isNotEqualTo(before.turns());
    }

    @Test
    void shouldHoldASolveBesideTheMiddleHalfOfThoseBefore() {
        bringIn(FIRST, 8, 4, "left");
        bringIn(FIRST.plusDays(1), 8, 5, "left");
        List<SolvesView.Item> timed = practice().solves().solves().stream()
                .filter(item ->
                        item.solved() && item.timeUs() != null && item.method().equals("CFOP"))
                .toList();
        SolvesView.Item last = timed.get(timed.size() - 1);
        List<Long> before = timed.subList(0, timed.size() - 1).stream()
                .map(SolvesView.Item::timeUs)
                .sorted()
                .toList();

        SolveView.Usual usual = practice().solve(last.id()).orElseThrow().usual();

        assertThat(usual.solves()).isEqualTo(before.size());
        assertThat(usual.nights()).isEqualTo(2);
        assertThat(usual.timeLowUs()).isBetween(before.get(0), before.get(before.size() / 2));
        assertThat(usual.timeHighUs()).isBetween(before.get(before.size() / 2), before.get(before.size() - 1));
        long below = before.stream().filter(time -> time < usual.timeLowUs()).count();
        assertThat(below).isBetween(before.size() / 4L - 1, before.size() / 4L + 1);
        assertThat(practice().solve(timed.get(2).id()).orElseThrow().usual()).isNull();
    }

    @Test
    void shouldExplainRestsAndFindingsInAgreement() {
        bringIn(FIRST, 10, 6, "left");
        int fermatas = 0;
        for (SolvesView.Item item : practice().solves().solves()) {
            SolveView solve = practice().solve(item.id()).orElseThrow();
            for (SolveView.Rest rest : solve.rests()) {
                long shared = rest.causes().stream()
                        .mapToLong(SolveView.Cause::shareUs)
                        .sum();
                assertThat((double) shared).isCloseTo(rest.excessUs(), within(10.0));
                assertThat(rest.fermata() == null).isEqualTo(rest.unjudged() != null);
                assertThat(rest.p()).isBetween(0.5, 1.0);
            }
            for (SolveView.Looking looking : solve.looking()) {
                boolean isFermata = solve.rests().stream()
                        .anyMatch(rest -> Boolean.TRUE.equals(rest.fermata()) && rest.startUs() == looking.neededUs());
                assertThat(looking.finding().equals("fermata"))
                        .as(looking.sentence())
                        .isEqualTo(isFermata);
                if (isFermata) {
                    fermatas++;
                    assertThat(looking.neededUs() - looking.knownUs()).isGreaterThanOrEqualTo(300_000);
                    assertThat(looking.sentence()).contains(String.join("-", looking.colours()), "you rested");
                }
            }
        }
        assertThat(fermatas).isPositive();
    }

    @Test
    void shouldFindNoRestsWhenThereAreNoTimes() {
        String untimed = "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"none\",\"hand\":\"left\","
                + "\"scramble\":\"R U R' U'\",\"started_at\":\"2026-11-20T20:00:00Z\"}\n"
                + "{\"turn\":\"U\"}\n{\"turn\":\"R\"}\n{\"turn\":\"U'\"}\n{\"turn\":\"R'\"}\n";
        add(store, untimed);
        SolveView solve = last();

        assertThat(solve.solved()).isTrue();
        assertThat(solve.rests()).isEmpty();
        assertThat(solve.looking()).isEmpty();
        assertThat(solve.usual()).isNull();
        assertThat(solve.derived().snapshot()).isEqualTo(solve.derived().beganFrom());
        assertThat(solve.derived().snapshot()).isEqualTo(Rhythm.coldStart().id());
    }

    /**
     * Held with the last layer to the side, as a motion sensor tells: nobody would read it so from the turns. An
     * evening later the same turns come without a sensor and without times.
     */
    @Test
    void shouldReadADayByWhatTheDaysBeforeItRepeatAndLearnFromItAsIfItHadNot() {
        addLastLayer(store, FIRST.plusDays(1).atTime(18, 30), false);
        refresh();
        SolveView alone = last();
        List<SequenceReading> readAlone =
                AccountRows.sequences(store.accounts().of(FIRST.plusDays(1)).get(0));
        derived.clear();

        for (int solve = 0; solve < 9; solve++) {
            addLastLayer(store, FIRST.atTime(18, 30 + solve), true);
        }
        refresh();

        assertThat(derived).containsExactly(FIRST, FIRST.plusDays(1));
        assertThat(practice().sequences("cook").repeated()).anySatisfy(repeated -> {
            assertThat(repeated.words()).isEqualTo("D R2 U R' D' R F U' F' R' D R' D'");
            assertThat(repeated.seen()).isEqualTo(10);
            assertThat(repeated.alike()).isEqualTo(9);
            assertThat(repeated.p()).isBetween(0.9, 1.0);
            assertThat(repeated.sure()).isTrue();
        });
        List<RhythmRow> rows = store.derivations().rhythms();
        assertThat(rows.get(0).sequencesBefore()).isEmpty();
        assertThat(rows.get(1).sequencesBefore())
                .isNotEmpty()
                .isEqualTo(rows.get(0).sequencesLeft());
        assertThat(last().turns()).isNotEqualTo(alone.turns());
        assertThat(AccountRows.sequences(store.accounts().of(FIRST.plusDays(1)).get(0)))
                .isEqualTo(readAlone);
        assertThat(practice().isStale()).isFalse();
    }

    /** A last layer that is turned with much doubt about the holds. */
    private static void addLastLayer(Store store, LocalDateTime started, boolean sensed) {
        List<Turn> turns =
                Sequence.parse("r U2 R U' r' F U R' U' F' r U' r'").walk(Orientation.IDENTITY).steps().stream()
                        .map(CoreStep::turn)
                        .toList();
        List<Turn> scramble = new ArrayList<>(turns.stream().map(Turn::inverse).toList());
        Collections.reverse(scramble);
        StringBuilder text = new StringBuilder("{\"format\":\"turn-stream\",\"version\":1,\"clock\":\""
                + (sensed ? "device" : "none") + "\",\"hand\":\"left\",\"solver\":\"cook\",\"scramble\":\""
                + Sequence.ofTurns(scramble) + "\",\"started_at\":\"" + started + ":00Z\"}\n");
        long at = 0;
        for (Turn turn : turns) {
            for (int sample = 0; sensed && sample < 6; sample++) {
                at += 50_000;
                // About z by a quarter: R is up and U to a side.
                text.append("{\"orientation\":[0.7071,0,0,0.7071],\"at\":" + at + "}\n");
            }
            text.append("{\"turn\":\"" + turn + "\"" + (sensed ? ",\"at\":" + at : "") + "}\n");
        }
        add(store, text.toString());
    }

    private Practice practice() {
        return new Practice(store);
    }

    private void refresh() {
        new Practice(store, (day, done, left) -> derived.add(day)).refresh();
    }

    private SolveView last() {
        List<SolvesView.Item> solves = practice().solves().solves();
        return practice().solve(solves.get(solves.size() - 1).id()).orElseThrow();
    }

    private void bringIn(LocalDate day, int solves, long seed, String hand) {
        bringIn(store, day, solves, seed, hand);
    }

    private static void bringIn(Store store, LocalDate day, int solves, long seed, String hand) {
        List<String> lines = new ArrayList<>(Rehearsal.evening(solves, seed).lines());
        lines.set(
                0,
                lines.get(0)
                        .replaceFirst(
                                "\"hand\":\"[a-z]+\"",
                                "\"hand\":\"" + hand + "\",\"started_at\":\"" + day
                                        + "T18:30:00Z\",\"zone\":\"Europe/Oslo\""));
        add(store, String.join("\n", lines));
    }

    private static void add(Store store, String text) {
        Clock clock = Clock.fixed(Instant.EPOCH, ZoneId.of("UTC"));
        new Importer(store, clock)
                .add(
                        "test",
                        PracticeFile.read("test", text.getBytes(StandardCharsets.UTF_8))
                                .iterator());
    }
}
