package fermata.daemon.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.hotspot.Series;
import fermata.analysis.record.Method;
import fermata.analysis.record.Outcome;
import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.DroppedFrames;
import fermata.daemon.capture.JournalException;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LinkEvent;
import fermata.decoder.stream.RawFrame;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

class StoreTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 24);

    @TempDir
    Path directory;

    private Home home;

    @BeforeEach
    void setUp() {
        home = new Home(directory.resolve("home"));
    }

    @Test
    void shouldGiveBackWhatWasAppendedWhenOpenedAgain() {
        CaptureStart start = StoreSamples.start();
        try (Store store = StoreSamples.open(home)) {
            CaptureJournal journal = store.captures().begin(start, "{\"name\":\"open\"}", "");
            List<CapturedItem> items = new ArrayList<>(StoreSamples.frames(1, 0, 3));
            items.add(new DroppedFrames(1, 3, 77, 5));
            items.add(new LinkEvent(1, 8, 99, new LinkChange.Resolved(247)));
            items.addAll(StoreSamples.frames(2, 0, 2));
            journal.append(items);
        }

        try (Store store = Store.openForReading(home)) {
            CaptureRow row = store.captures().find(1).orElseThrow();
            assertThat(row.start()).isEqualTo(start);
            assertThat(row.profileJson()).isEqualTo("{\"name\":\"open\"}");
            assertThat(store.captures().all()).containsExactly(row);
            List<RawFrame> frames = store.captures().frames(1);
            assertThat(frames).extracting(RawFrame::connection).containsExactly(1, 1, 1, 2, 2);
            assertThat(frames.get(4).bytes()).isEqualTo(StoreSamples.frame(2, 1).bytes());
            assertThat(store.captures().drops(1)).containsExactly(new Captures.Drop(77, 5));
            assertThat(store.captures().extent(1)).isEqualTo("2.1 1.3 -");
        }
    }

    @Test
    void shouldKeepEachItemOnceWhenTheyAreAppendedAgain() {
        try (Store store = StoreSamples.open(home)) {
            CaptureJournal journal = store.captures().begin(StoreSamples.start(), "{}", "");
            journal.append(StoreSamples.frames(1, 0, 10));
            journal.append(StoreSamples.frames(1, 5, 15));

            assertThat(store.captures().frames(1)).hasSize(15);
        }
    }

    @Test
    void shouldKeepNothingOfAGroupAndGoOnWhenTheDiskWasFull() {
        try (Store store = StoreSamples.open(home)) {
            CaptureJournal journal = store.captures().begin(StoreSamples.start(), "{}", "");
            journal.append(StoreSamples.frames(1, 0, 10));
            store.limitBytes(OptionalLong.of(store.bytes()));

            assertThatThrownBy(() -> journal.append(StoreSamples.frames(1, 10, 2000)))
                    .isInstanceOfSatisfying(
                            JournalException.class,
                            e -> assertThat(e.fault()).isEqualTo(JournalException.Fault.DISK_FULL))
                    .hasMessageContaining(home.database().toString())
                    .hasMessageContaining("free some space");
            assertThat(store.captures().frames(1)).hasSize(10);

            store.limitBytes(OptionalLong.empty());
            journal.append(StoreSamples.frames(1, 10, 2000));
            assertThat(store.captures().frames(1)).hasSize(2000);
        }
    }

    /** What a small tmpfs without room gave when a home on it was opened. */
    @Test
    void shouldCallTheDiskFullWhenThereIsNoRoomForWhatProcessesShare() {
        SQLException failure = new SQLiteException("I/O error within xShmMap", SQLiteErrorCode.SQLITE_IOERR_SHMSIZE);

        StoreException said = SqliteFaults.of("open the practice", home.database(), failure);

        assertThat(said.fault()).isEqualTo(StoreFault.DISK_FULL);
        assertThat(said).hasMessageContaining("is full; free some space");
    }

    @Test
    void shouldRefuseASecondWriterAndNameTheFirst() {
        try (Store store = StoreSamples.open(home)) {
            assertThat(store.isWritable()).isTrue();
            assertThatThrownBy(() -> StoreSamples.open(home))
                    .isInstanceOf(StoreException.class)
                    .hasMessageContaining("process " + ProcessHandle.current().pid())
                    .hasMessageContaining("--home");
            assertThat(Store.tryOpenToAdd(home, () -> StoreSamples.NOW)).isEmpty();
        }
        try (Store again = StoreSamples.open(home)) {
            assertThat(again.isWritable()).isTrue();
        }
    }

    @Test
    void shouldSetADamagedDatabaseAsideWhenOpenedToWrite() throws IOException {
        Files.createDirectories(home.directory());
        Files.writeString(home.database(), "this is no database, but it may be somebody's evening ".repeat(200));

        assertThatThrownBy(() -> Store.openForReading(home))
                .hasMessageContaining("is damaged")
                .hasMessageContaining("left as it is; fermata recover")
                .hasMessageNotContaining("--home");
        try (Store store = StoreSamples.open(home)) {
            Path aside = home.directory().resolve("practice.db.damaged-20261124-210405");
            assertThat(store.setAside()).contains(aside);
            assertThat(aside).content().startsWith("this is no database");
            assertThat(store.captures().all()).isEmpty();
        }
    }

    @Test
    void shouldRefuseWhenTheSchemaIsNewerThanTheProgram() throws SQLException {
        StoreSamples.open(home).close();
        alter("PRAGMA user_version = 99");
        alter("INSERT INTO schema_number VALUES (99)");

        assertThatThrownBy(() -> StoreSamples.open(home)).hasMessageContaining("schema 99");
        assertThatThrownBy(() -> Store.openForReading(home)).hasMessageContaining("schema 99");
        assertThat(home.database()).exists();
    }

    @Test
    void shouldRefuseToAlterWhatWasHeard() throws SQLException {
        try (Store store = StoreSamples.open(home)) {
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 3));
        }

        assertThatThrownBy(() -> alter("UPDATE frame SET bytes = x'00'")).hasMessageContaining("never altered");
    }

    /** Asked for each capture at each question: a year of turns must not be read for a handful of drills. */
    @ParameterizedTest
    @EnumSource(Captures.Said.class)
    void shouldFindWhatWasToldByAnIndexWhenThereAreManyEvents(Captures.Said kind) throws SQLException {
        StoreSamples.open(home).close();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + home.database());
                Statement statement = connection.createStatement();
                ResultSet plan = statement.executeQuery("EXPLAIN QUERY PLAN " + kind.sql)) {
            StringBuilder steps = new StringBuilder();
            while (plan.next()) {
                steps.append(plan.getString("detail")).append('\n');
            }
            assertThat(steps).contains("event USING INDEX event_" + kind.name().toLowerCase(Locale.ROOT));
        }
    }

    @Test
    void shouldSayWhatToDoWhenThereIsNoPracticeYet() {
        assertThatThrownBy(() -> Store.openForReading(home))
                .hasMessageContaining("no practice in " + home.directory())
                .hasMessageContaining("listen");
        assertThat(home.directory()).doesNotExist();
    }

    @Test
    void shouldReplaceWhatWasDerivedWhenItIsDerivedAgain() {
        try (Store store = StoreSamples.open(home)) {
            store.captures().begin(StoreSamples.start(), "{}", "");
            Derivations derivations = store.derivations();
            derivations.replace(
                    derived(new DerivationRow(1, "v1", "1.9 - -", 8, 1, 1, 2), solve("1-3", 3), solve("1-90", 90)));
            derivations.replace(derived(new DerivationRow(1, "v2", "1.9 - -", 9, 1, 0, 1), solve("1-4", 4)));

            assertThat(derivations.solves()).extracting(SolveRow::id).containsExactly("1-4");
            assertThat(derivations.solves(DAY)).containsExactly(solve("1-4", 4));
            assertThat(derivations.solve("1-3")).isEmpty();
            assertThat(derivations.nights()).containsExactly(new NightRow(DAY, "v2", "s", "{}"));
            assertThat(derivations.snapshot("s")).contains(new SnapshotRow("s", DAY, "{}"));
            assertThat(derivations.rhythms()).containsExactly(rhythm("cold", "s"));
            assertThat(store.accounts().of(DAY)).extracting(AccountRow::solveId).containsExactly("1-4");
            assertThat(derivations.find(1)).contains(new DerivationRow(1, "v2", "1.9 - -", 9, 1, 0, 1));
        }
    }

    @Test
    void shouldForgetTheRhythmThatADayLeftBeforeItGrew() {
        try (Store store = StoreSamples.open(home)) {
            store.derivations().replace(rhythmOnly("s"));
            store.derivations().replace(rhythmOnly("t"));

            assertThat(store.derivations().snapshot("s")).isEmpty();
            assertThat(store.derivations().snapshot("t")).isPresent();
        }
    }

    @Test
    void shouldGiveTheTimedSolvesOfTheSameSeriesBeforeOneNewestFirst() {
        Instant start = StoreSamples.start().startedWall();
        AccountRow untimed = account("1-20", start.plusSeconds(20), Event.NO_TIME);
        AccountRow last = account("1-60", start.plusSeconds(60), 17_000_000);
        Series right = new Series("cook", "galley cube", Hand.RIGHT, Method.CFOP, false);
        AccountRow other = new AccountRow("1-30", DAY, start.plusSeconds(30), right, Outcome.SOLVED, 15_000_000, "{}");
        List<AccountRow> rows = List.of(
                account("1-1", start, 20_000_000),
                account("1-10", start.plusSeconds(10), 19_000_000),
                untimed,
                other,
                account("1-40", start.plusSeconds(40), 18_000_000),
                last);
        try (Store store = StoreSamples.open(home)) {
            store.derivations()
                    .replace(new DerivedRows(List.of(), Set.of(DAY), List.of(), List.of(), List.of(), List.of(), rows));

            assertThat(store.accounts().of(DAY)).containsExactlyElementsOf(rows);
            assertThat(store.accounts().before(last, Set.of(), 2))
                    .extracting(AccountRow::solveId)
                    .containsExactly("1-40", "1-10");
            assertThat(store.accounts().before(last, Set.of(DAY), 2)).isEmpty();
        }
    }

    private static DerivedRows rhythmOnly(String id) {
        return new DerivedRows(
                List.of(),
                Set.of(DAY),
                List.of(new SnapshotRow(id, DAY, "{}")),
                List.of(rhythm("cold", id)),
                List.of(),
                List.of(),
                List.of());
    }

    @Test
    void shouldKeepAcknowledgedRowsThroughAPowerCutByItsSettings() throws SQLException {
        try (Connection connection = Database.openForWriting(made())) {
            assertThat(ask(connection, "PRAGMA journal_mode")).isEqualTo("wal");
            // sqlite.org/pragma.html#pragma_synchronous: 2 is FULL
            assertThat(ask(connection, "PRAGMA synchronous")).isEqualTo("2");
            assertThat(ask(connection, "PRAGMA foreign_keys")).isEqualTo("1");
            assertThat(ask(connection, "PRAGMA busy_timeout")).isEqualTo("5000");
        }
    }

    @Test
    void shouldKnowAnOldLibraryByItsVersion() {
        assertThat(Database.isOlder("3.51.2", 3, 51, 3)).isTrue();
        assertThat(Database.isOlder("3.9.9", 3, 51, 3)).isTrue();
        assertThat(Database.isOlder("3.51.3", 3, 51, 3)).isFalse();
        assertThat(Database.isOlder("3.54.1", 3, 51, 3)).isFalse();
        assertThat(Database.isOlder("4.0", 3, 51, 3)).isFalse();
    }

    @Test
    void shouldOpenANewHomeWhereDigitsAreWrittenOtherwise() {
        Locale own = Locale.getDefault();
        Locale.setDefault(Locale.forLanguageTag("ar-EG"));
        try (Store store = StoreSamples.open(home)) {
            assertThat(store.captures().all()).isEmpty();
        } finally {
            Locale.setDefault(own);
        }
    }

    @Test
    void shouldFollowTheXdgRulesWhenNoHomeIsNamed() {
        Path user = Path.of("/home/deckhand");

        // XDG Base Directory Specification 0.8: $XDG_DATA_HOME, else $HOME/.local/share; relative paths are ignored.
        assertThat(Home.usual(Map.of("XDG_DATA_HOME", "/data"), user).directory())
                .isEqualTo(Path.of("/data/fermata"));
        assertThat(Home.usual(Map.of("XDG_DATA_HOME", "data"), user).directory())
                .isEqualTo(Path.of("/home/deckhand/.local/share/fermata"));
        assertThat(Home.usual(Map.of(), user).directory()).isEqualTo(Path.of("/home/deckhand/.local/share/fermata"));
    }

    private Home made() {
        home.make();
        return home;
    }

    private static String ask(Connection connection, String question) throws SQLException {
        return Rows.only(connection, question, row -> row.getString(1));
    }

    private void alter(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + home.database());
                Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }

    private static DerivedRows derived(DerivationRow capture, SolveRow... solves) {
        return new DerivedRows(
                List.of(capture),
                Set.of(DAY),
                List.of(new SnapshotRow("s", DAY, "{}")),
                List.of(rhythm("cold", "s")),
                List.of(new NightRow(DAY, capture.codeVersion(), "s", "{}")),
                Arrays.stream(solves).map(row -> new SolveDocument(row, "{}")).toList(),
                Arrays.stream(solves)
                        .map(row -> account(row.id(), row.startedAt(), 20_000_000))
                        .toList());
    }

    private static RhythmRow rhythm(String beganFrom, String left) {
        return new RhythmRow(DAY, "cook", "galley cube", "left", beganFrom, left, "", "q");
    }

    private static AccountRow account(String id, Instant startedAt, long timeMicros) {
        Series series = new Series("cook", "galley cube", Hand.LEFT, Method.CFOP, false);
        return new AccountRow(id, DAY, startedAt, series, Outcome.SOLVED, timeMicros, "{}");
    }

    private static SolveRow solve(String id, int firstTurn) {
        return new SolveRow(
                id, 1, DAY, StoreSamples.start().startedWall().plusSeconds(firstTurn), firstTurn, "v", "s", "{}");
    }
}
