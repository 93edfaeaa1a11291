package fermata.daemon.practice;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.hotspot.Loss;
import fermata.analysis.night.SolveAccount;
import fermata.daemon.demo.Rehearsal;
import fermata.daemon.json.Json;
import fermata.daemon.json.NightDocument;
import fermata.daemon.json.NightsView;
import fermata.daemon.json.SolveView;
import fermata.daemon.process.OwnProcess;
import fermata.daemon.store.AccountRow;
import fermata.daemon.store.DerivedRows;
import fermata.daemon.store.Home;
import fermata.daemon.store.NightRow;
import fermata.daemon.store.Store;
import fermata.daemon.telling.Importer;
import fermata.daemon.turnfile.PracticeFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;

/**
 * A year of accounts in a real store, summed up by a process of its own with the memory that a board has. The accounts
 * are those of a rehearsed evening, each solve made slower or faster by chance and by the day.
 */
@Tag("proof")
class YearProofTest {
    private static final LocalDate FIRST = LocalDate.of(2025, 11, 25);
    private static final int NIGHTS = 365;
    private static final int SOLVES = 40_000;
    private static final int HEAP_MEGABYTES = 256;

    @TempDir
    Path directory;

    @Test
    void shouldSumUpAYearWithinAMinuteAndANightWithinTwoSeconds() {
        List<SolveAccount> evening = rehearsed();
        Path home = directory.resolve("year");
        long turns = write(new Home(home), evening);

        Answer all = ask(home, "night", "--over", "all");
        Answer week = ask(home, "night", "--over", "week");
        Answer night = ask(home, "night");
        Answer cases = ask(home, "cases");

        System.out.printf(
                "%d solves, %d turns, %d nights at %d MB: all %.1f s, week %.1f s, night %.1f s, cases %.1f s%n",
                SOLVES, turns, NIGHTS, HEAP_MEGABYTES, all.seconds, week.seconds, night.seconds, cases.seconds);
        assertThat(all.json.get("solves").intValue() + all.json.get("abandoned").intValue())
                .isEqualTo(SOLVES);
        assertThat(all.json.get("nights").intValue()).isEqualTo(NIGHTS);
        assertThat(all.seconds).isLessThan(60);
        assertThat(cases.seconds).isLessThan(60);
        assertThat(night.seconds).isLessThan(2);
    }

    private List<SolveAccount> rehearsed() {
        try (Store store = Store.openForWriting(new Home(directory.resolve("evening")), LocalDateTime::now)) {
            String text = String.join("\n", Rehearsal.evening(120, 5).lines()) + "\n";
            new Importer(store, Clock.fixed(Instant.parse("2025-11-24T20:00:00Z"), ZoneId.of("UTC")))
                    .add(
                            "evening",
                            PracticeFile.read("evening", text.getBytes(StandardCharsets.UTF_8))
                                    .iterator());
            Practice practice = new Practice(store);
            AccountRows reader = new AccountRows();
            return practice.nights().nights().stream()
                    .flatMap(night -> store.accounts().of(LocalDate.parse(night.day())).stream())
                    .map(reader::read)
                    .filter(SolveAccount::isTimed)
                    .toList();
        }
    }

    private static long write(Home home, List<SolveAccount> evening) {
        SplittableRandom random = new SplittableRandom(40_000);
        long turns = 0;
        int written = 0;
        try (Store store = Store.openForWriting(home, LocalDateTime::now)) {
            for (int night = 0; night < NIGHTS; night++) {
                LocalDate day = FIRST.plusDays(night);
                Instant at = day.atTime(19, 0).toInstant(ZoneOffset.UTC);
                List<AccountRow> rows = new ArrayList<>();
                for (int until = (int) ((night + 1L) * SOLVES / NIGHTS); written < until; written++) {
                    SolveAccount solve = evening.get(random.nextInt(evening.size()));
                    double pace = Math.exp(0.2 * random.nextGaussian() - 0.0005 * night);
                    rows.add(AccountRows.row(paced(solve, written + "-0", pace), day, at, List.of()));
                    turns += solve.turns();
                    at = at.plus(Duration.ofSeconds(45));
                }
                store.derivations().replace(rows(day, rows));
            }
        }
        return turns;
    }

    private static SolveAccount paced(SolveAccount solve, String id, double pace) {
        List<Loss> losses = solve.losses().stream()
                .map(loss -> new Loss(
                        loss.key(), id, loss.afterTurn(), loss.atMicros(), loss.micros() * pace, loss.clarity()))
                .toList();
        return new SolveAccount(
                id,
                solve.series(),
                solve.outcome(),
                Math.round(solve.timeMicros() * pace),
                solve.turns(),
                solve.regrips(),
                solve.stages(),
                losses,
                solve.cases());
    }

    private static DerivedRows rows(LocalDate day, List<AccountRow> accounts) {
        NightDocument document = new NightDocument(
                new NightsView.Item(day.toString(), accounts.size(), null, null),
                new SolveView.Derived("made up", "made up", "made up"));
        return new DerivedRows(
                List.of(),
                Set.of(day),
                List.of(),
                List.of(),
                List.of(new NightRow(day, DayDeriver.VERSION, "made up", Json.write(document))),
                List.of(),
                accounts);
    }

    private record Answer(JsonNode json, double seconds) {}

    private static Answer ask(Path home, String... command) {
        List<String> arguments = Stream.concat(Stream.of(command), Stream.of("--json", "--home", home.toString()))
                .toList();
        long from = System.nanoTime();
        String said = OwnProcess.run(HEAP_MEGABYTES, arguments);
        return new Answer(Json.read(said), (System.nanoTime() - from) / 1e9);
    }
}
