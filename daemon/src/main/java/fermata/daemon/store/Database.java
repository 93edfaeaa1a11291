package fermata.daemon.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.function.Function;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;

/** Opens connections to a home's database with the settings that keep acknowledged rows through a power cut. */
final class Database {
    /** Up to 3.51.2, two connections that write and checkpoint at once could corrupt a WAL database. */
    private static final int[] OLDEST_SAFE = {3, 51, 3};

    static final int BUSY_TIMEOUT_MILLIS = 5_000;
    /** A WAL that a long reader let grow is cut back to this once it is checkpointed. */
    private static final int JOURNAL_SIZE_LIMIT_BYTES = 4 << 20;

    private Database() {}

    /** The one connection that writes; makes the database and its schema where they are missing. */
    static Connection openForWriting(Home home) {
        NativeLibrary.prepare(home);
        SQLiteConfig config = config();
        config.setJournalMode(JournalMode.WAL);
        // FULL: a commit is on the disk before it is acknowledged; NORMAL loses acknowledged rows in a power cut.
        config.setSynchronous(SynchronousMode.FULL);
        config.setJournalSizeLimit(JOURNAL_SIZE_LIMIT_BYTES);
        return open(
                home,
                "jdbc:sqlite:" + home.database(),
                config,
                failure -> ofOpening(home, SqliteFaults.of("open the practice for writing", home.database(), failure)),
                connection -> {
                    quickCheck(connection, home.database());
                    tryToWrite(connection);
                    Migrations.apply(connection, home.database());
                    SchemaCheck.objects(connection, home.database());
                });
    }

    /** Brings the schema up to date; what is read of it must not be opened before. */
    static void bringUpToDate(Home home) {
        close(openForWriting(home));
    }

    /** A connection that cannot write. */
    static Connection openForReading(Home home) {
        if (!Files.exists(home.database())) {
            throw new StoreException(
                    StoreFault.READ_ONLY,
                    "there is no practice in " + home.directory()
                            + " yet; record some with listen, bring some in with import, or name another with --home");
        }
        NativeLibrary.prepare(home);
        try {
            return openForReading(home, readingUrl(home));
        } catch (StoreException e) {
            if (e.fault() != StoreFault.DISK_FULL || hasLog(home)) {
                throw e;
            }
            // Nothing is in the log, so that the file alone is all there is; on a full disk nobody writes it.
            return openForReading(home, immutable(home));
        }
    }

    private static boolean hasLog(Home home) {
        return home.log().toFile().length() > 0;
    }

    private static String immutable(Home home) {
        return "jdbc:sqlite:file:" + home.database().toUri().getRawPath() + "?immutable=1";
    }

    private static Connection openForReading(Home home, String url) {
        SQLiteConfig config = config();
        config.setReadOnly(true);
        return open(
                home,
                url,
                config,
                failure -> ofOpening(home, SqliteFaults.ofReading(home.database(), failure)),
                connection -> {
                    if (Migrations.checkedVersion(connection, home.database()) < Migrations.NEWEST) {
                        throw new StoreException(
                                StoreFault.OUTDATED, home.database() + " was written by an older fermata");
                    }
                    SchemaCheck.objects(connection, home.database());
                });
    }

    /** SQLite says of some damages of the header that the file may not be opened, or that it does not know it. */
    private static StoreException ofOpening(Home home, StoreException said) {
        boolean isUnclear = said.fault() == StoreFault.READ_ONLY || said.fault() == StoreFault.BROKEN;
        return isUnclear && FileHeader.isDamaged(home.database())
                ? new StoreException(
                        StoreFault.DAMAGED, SqliteFaults.isDamaged(home.database()) + " (its header is altered)", said)
                : said;
    }

    private static String readingUrl(Home home) {
        Path wal = Path.of(home.database() + "-wal");
        boolean onReadOnlyMedium = !Files.isWritable(home.directory()) && !Files.exists(wal);
        // Without a -wal file and without the right to make one, SQLite reads a WAL database only as immutable.
        return "jdbc:sqlite:file:" + home.database().toUri().getRawPath() + (onReadOnlyMedium ? "?immutable=1" : "");
    }

    private static SQLiteConfig config() {
        SQLiteConfig config = new SQLiteConfig();
        config.setBusyTimeout(BUSY_TIMEOUT_MILLIS);
        config.enforceForeignKeys(true);
        return config;
    }

    /** What is done with a new connection before anybody gets it. */
    private interface Check {
        void run(Connection connection) throws SQLException;
    }

    private static Connection open(
            Home home, String url, SQLiteConfig config, Function<SQLException, StoreException> fault, Check check) {
        Connection connection = null;
        boolean usable = false;
        try {
            connection = config.createConnection(url);
            checkLibrary(connection);
            check.run(connection);
            usable = true;
            return connection;
        } catch (SQLException e) {
            throw fault.apply(e);
        } finally {
            if (!usable) {
                close(connection);
            }
        }
    }

    static void close(Connection connection) {
        if (connection != null) {
            try {
                connection.close();
            } catch (SQLException e) {
                throw new StoreException(StoreFault.BROKEN, "cannot close the database: " + e.getMessage(), e);
            }
        }
    }

    private static void checkLibrary(Connection connection) throws SQLException {
        String version = ask(connection, "SELECT sqlite_version()");
        if (isOlder(version, OLDEST_SAFE)) {
            throw new StoreException(
                    StoreFault.WRONG_VERSION,
                    "SQLite " + version + " can corrupt a database that is read while it is written; 3.51.3 or newer is"
                            + " needed");
        }
    }

    static boolean isOlder(String version, int... oldest) {
        String[] parts = version.split("\\.");
        for (int i = 0; i < oldest.length; i++) {
            int part = i < parts.length ? Integer.parseInt(parts[i]) : 0;
            if (part != oldest[i]) {
                return part < oldest[i];
            }
        }
        return false;
    }

    /** SQLite opens a file whose header names a way of writing that it does not know, and only refuses to write. */
    private static void tryToWrite(Connection connection) throws SQLException {
        String version = ask(connection, "PRAGMA user_version");
        Rows.run(connection, "BEGIN IMMEDIATE");
        try {
            Rows.run(connection, "PRAGMA user_version = " + version);
        } finally {
            Rows.run(connection, "ROLLBACK");
        }
    }

    private static void quickCheck(Connection connection, Path database) throws SQLException {
        String verdict = ask(connection, "PRAGMA quick_check(1)");
        if (!"ok".equals(verdict)) {
            throw new StoreException(StoreFault.DAMAGED, SqliteFaults.isDamaged(database) + " (" + verdict + ")");
        }
    }

    private static String ask(Connection connection, String question) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(question)) {
            return result.getString(1);
        }
    }
}
