package fermata.daemon.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.daemon.capture.JournalException;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What is acknowledged is counted, and what of it is not there is named. */
class CountedTest {
    @TempDir
    Path directory;

    private Home home;

    @BeforeEach
    void setUp() {
        home = new Home(directory.resolve("home"));
    }

    @Test
    void shouldNameTheFramesOfALogThatIsLost() throws Exception {
        Path pulled = directory.resolve("pulled");
        try (Store store = StoreSamples.open(home)) {
            CaptureJournal journal = store.captures().begin(StoreSamples.start(), "{}", "");
            journal.append(StoreSamples.frames(1, 0, 10));
            journal.rested();
            journal.append(StoreSamples.frames(1, 10, 30));
            copy(home.directory(), pulled);
        }
        Files.delete(new Home(pulled).log());

        try (Store store = Store.openForReading(new Home(pulled))) {
            assertThat(store.endsTooEarly()).isTrue();
            assertThat(store.missing()).containsExactly(new Missing(Missing.Kind.FRAME, 11, 30));
            assertThat(store.warnings())
                    .anyMatch(warning -> warning.startsWith("20 frames (11 to 30) were acknowledged"));
            assertThat(store.captures().heard(1).holes())
                    .extracting(Captures.Drop::frames)
                    .containsExactly(20L);
        }
        try (Store store = StoreSamples.open(new Home(pulled))) {
            assertThat(store.missing()).containsExactly(new Missing(Missing.Kind.FRAME, 11, 30));
            // What comes after them is numbered after them.
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 2));
            store.dismiss();
            assertThat(store.missing()).isEmpty();
        }
        try (Store store = Store.openForReading(new Home(pulled))) {
            assertThat(store.missing()).isEmpty();
            assertThat(store.endsTooEarly()).isFalse();
        }
    }

    /** The log holds nothing that a damage could take once the cube has rested. */
    @Test
    void shouldLeaveAnEmptyLogWhenTheCubeRests() throws Exception {
        try (Store store = StoreSamples.open(home)) {
            CaptureJournal journal = store.captures().begin(StoreSamples.start(), "{}", "");
            journal.append(StoreSamples.frames(1, 0, 10));
            assertThat(Files.size(home.log())).isPositive();

            journal.rested();

            assertThat(Files.size(home.log())).isZero();
        }
    }

    @Test
    void shouldLeaveOutAndNameAFrameThatTheDiskAltered() throws Exception {
        try (Store store = StoreSamples.open(home)) {
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 10));
        }
        alter("DROP TRIGGER frame_is_append_only");
        alter("UPDATE frame SET bytes = x'00' WHERE ordinal = 4");
        alter("CREATE TRIGGER frame_is_append_only BEFORE UPDATE ON frame\n"
                + "BEGIN SELECT RAISE(ABORT, 'frames are appended, never altered'); END");

        try (Store store = Store.openForReading(home)) {
            assertThat(store.captures().frames(1)).hasSize(9);
            assertThat(store.missing()).containsExactly(new Missing(Missing.Kind.FRAME, 5, 5));
        }
    }

    @Test
    void shouldHearAFrameThoughItsCharacteristicWasAltered() throws Exception {
        String profile = "{\"characteristic\": \"" + StoreSamples.CHARACTERISTIC + "\"}";
        try (Store store = StoreSamples.open(home)) {
            store.captures().begin(StoreSamples.start(), profile, "").append(StoreSamples.frames(1, 0, 10));
        }
        alter("UPDATE characteristic SET uuid = replace(uuid, 'b3cb', 'b3cc')");

        try (Store store = Store.openForReading(home)) {
            assertThat(store.captures().frames(1))
                    .hasSize(10)
                    .allMatch(frame -> frame.characteristic().toString().equals(StoreSamples.CHARACTERISTIC));
            assertThat(store.missing()).isEmpty();
        }
    }

    @Test
    void shouldTrustRowsOfOlderProgramsThatHaveNoNumber() throws Exception {
        try (Store store = StoreSamples.open(home)) {
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 10));
        }
        alter("DROP TRIGGER frame_is_append_only");
        alter("UPDATE frame SET number = NULL, sum = NULL");
        alter("UPDATE capture SET sum = NULL, frames_before = NULL");
        alter("CREATE TRIGGER frame_is_append_only BEFORE UPDATE ON frame\n"
                + "BEGIN SELECT RAISE(ABORT, 'frames are appended, never altered'); END");
        Files.delete(home.count());

        try (Store store = StoreSamples.open(home)) {
            assertThat(store.captures().frames(1)).hasSize(10);
            assertThat(store.missing()).isEmpty();
            assertThat(store.warnings()).isEmpty();
        }
    }

    /** The byte that names the way of writing; SQLite opens such a file to read. Source: sqlite.org/fileformat2. */
    @Test
    void shouldSetAsideWhatTheHeaderSaysIsOfAnUnknownWayOfWriting() throws Exception {
        StoreSamples.open(home).close();
        try (RandomAccessFile file = new RandomAccessFile(home.database().toFile(), "rw")) {
            file.seek(18);
            file.write(6);
        }

        assertThatThrownBy(() -> Store.openToAdd(home, () -> StoreSamples.NOW))
                .isInstanceOfSatisfying(
                        StoreException.class, e -> assertThat(e.fault()).isEqualTo(StoreFault.DAMAGED));
        try (Store store = StoreSamples.open(home)) {
            assertThat(store.setAside()).isPresent();
        }
    }

    /** The codes of EIO, EDQUOT and a failed fsync. Source: sqlite.org/rescode.html and SQLite's os_unix.c. */
    @ParameterizedTest
    @EnumSource(
            value = SQLiteErrorCode.class,
            names = {"SQLITE_IOERR_WRITE", "SQLITE_IOERR_FSYNC", "SQLITE_IOERR_READ", "SQLITE_IOERR_DIR_FSYNC"})
    void shouldCallItAFailingDiskThatMayBeMended(SQLiteErrorCode code) {
        StoreException said =
                SqliteFaults.of("record what the cube said", home.database(), new SQLiteException("I/O error", code));

        assertThat(said.fault()).isEqualTo(StoreFault.DISK_FAILING);
        assertThat(said.fault().forJournal()).isEqualTo(JournalException.Fault.DISK_FAILING);
        assertThat(said.fault().forJournal().isPassing()).isTrue();
        assertThat(said).hasMessageContaining("answers with errors");
    }

    @Test
    void shouldCallANumberOfTheHeaderDamagedThatTheTablesDoNotKnow() throws Exception {
        StoreSamples.open(home).close();
        alter("PRAGMA user_version = 71");

        assertThatThrownBy(() -> Store.openForReading(home)).hasMessageContaining("is damaged");
        try (Store store = StoreSamples.open(home)) {
            assertThat(store.setAside()).isPresent();
        }
    }

    private void alter(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + home.database());
                Statement statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }

    /** By another process: closing a database's file in this one would take SQLite's locks from it. */
    private static void copy(Path from, Path to) throws IOException, InterruptedException {
        assertThat(new ProcessBuilder("cp", "-a", from.toString(), to.toString())
                        .inheritIO()
                        .start()
                        .waitFor())
                .isZero();
    }
}
