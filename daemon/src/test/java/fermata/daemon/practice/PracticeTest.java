package fermata.daemon.practice;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.json.Over;
import fermata.daemon.store.DerivationRow;
import fermata.daemon.store.DerivedRows;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.telling.Importer;
import fermata.daemon.turnfile.PracticeFile;
import fermata.decoder.notation.Sequence;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PracticeTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 24);

    @TempDir
    Path directory;

    private Home home;

    @BeforeEach
    void setUp() {
        home = new Home(directory);
    }

    @Test
    void shouldDeriveTheSameAgainAfterAnotherVersionDid() {
        try (Store store = open()) {
            bringIn(store, "2026-11-24T20:00:00Z", "R U R' U'");
            Practice practice = new Practice(store);
            String before = practice.solvesJson() + practice.nightsJson();
            // As an older version would have left it: nothing found, from everything there was.
            store.derivations()
                    .replace(new DerivedRows(
                            List.of(new DerivationRow(
                                    1, "older", store.captures().extent(1), 0, 0, 0, 0)),
                            Set.of(DAY),
                            List.of(),
                            List.of(),
                            List.of(),
                            List.of(),
                            List.of()));

            assertThat(practice.isStale()).isTrue();
            assertThat(practice.solvesJson() + practice.nightsJson()).isEqualTo(before);
            assertThat(practice.isStale()).isFalse();
        }
    }

    @Test
    void shouldSumADayUpOverAllItsCaptures() {
        try (Store store = open()) {
            Practice practice = new Practice(store);
            bringIn(store, "2026-11-24T20:00:00Z", "R U R' U'");
            assertThat(practice.night(DAY, Over.NIGHT).orElseThrow().solves()).isEqualTo(1);
            bringIn(store, "2026-11-24T21:00:00Z", "F2 L B");
            bringIn(store, "2026-11-25T21:00:00Z", "D R");

            assertThat(practice.night(DAY, Over.NIGHT).orElseThrow().solves()).isEqualTo(2);
            assertThat(practice.solves(DAY).solves()).extracting("id").containsExactly("1-0", "2-0");
            assertThat(practice.solves().solves()).extracting("number").containsExactly(1, 2, 1);
            assertThat(practice.nights().nights()).extracting("day").containsExactly("2026-11-25", "2026-11-24");
        }
    }

    @Test
    void shouldAnswerAlikeFromMemoryWhileAnotherWrites() {
        try (Store writing = open()) {
            new Practice(writing).refresh();
            bringIn(writing, "2026-11-24T20:00:00Z", "R U R' U'");
            String fromMemory;
            try (Store reading = Store.openForReading(home)) {
                Practice practice = new Practice(reading);
                assertThat(reading.isWritable()).isFalse();
                assertThat(writing.derivations().solves()).isEmpty();
                fromMemory = answers(practice);
            }

            assertThat(answers(new Practice(writing))).isEqualTo(fromMemory);
            assertThat(writing.derivations().solves()).hasSize(1);
        }
    }

    private static String answers(Practice practice) {
        return practice.solvesJson()
                + practice.nightsJson()
                + practice.nightJson(DAY, Over.NIGHT).orElseThrow()
                + practice.solveJson("1-0").orElseThrow()
                + practice.solvesJson(DAY);
    }

    private Store open() {
        return Store.openForWriting(home, LocalDateTime::now);
    }

    /** A stream that begins scrambled and takes the scramble back, a turn each 200 ms. */
    private static void bringIn(Store store, String startedAt, String scramble) {
        StringBuilder text = new StringBuilder("{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"device\","
                + "\"hand\":\"left\",\"scramble\":\"" + scramble + "\",\"started_at\":\"" + startedAt
                + "\",\"zone\":\"Europe/Oslo\"}\n");
        String[] back = Sequence.parse(scramble).inverse().toString().split(" ");
        for (int i = 0; i < back.length; i++) {
            text.append("{\"turn\":\"")
                    .append(back[i])
                    .append("\",\"at\":")
                    .append(i * 200_000)
                    .append("}\n");
        }
        Clock clock = Clock.fixed(Instant.EPOCH, ZoneId.of("UTC"));
        new Importer(store, clock)
                .add(
                        "test",
                        PracticeFile.read("test", text.toString().getBytes(StandardCharsets.UTF_8))
                                .iterator());
    }
}
