package fermata.daemon.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Locale;

/** Brings a database to the schema of this program: numbered resource files, each applied once and whole. */
final class Migrations {
    /** The newest schema; there is a resource for each number from 1 to this. */
    static final int NEWEST = 8;
    /** From this schema on the number stands in a table, too. */
    static final int FIRST_NUMBERED = 7;
    /** SQLITE_ERROR and SQLITE_CONSTRAINT: the database is not what its number says. */
    private static final List<Integer> NOT_AS_NUMBERED = List.of(1, 19);

    private Migrations() {}

    /** Applies what is missing, each migration in a transaction of its own. */
    static void apply(Connection connection, Path database) throws SQLException {
        int present = checkedVersion(connection, database);
        for (int number = present + 1; number <= NEWEST; number++) {
            try (Statement statement = connection.createStatement()) {
                statement.executeUpdate("BEGIN IMMEDIATE");
                try {
                    statement.executeUpdate(resource(number));
                    if (number >= FIRST_NUMBERED) {
                        statement.executeUpdate("INSERT INTO schema_number (number) VALUES (" + number + ")");
                    }
                    statement.executeUpdate("PRAGMA user_version = " + number);
                    statement.executeUpdate("COMMIT");
                } catch (SQLException e) {
                    statement.executeUpdate("ROLLBACK");
                    if (NOT_AS_NUMBERED.contains(e.getErrorCode() & 0xFF)) {
                        throw notAsNumbered(database, present, e);
                    }
                    throw e;
                }
            }
        }
    }

    /** The schema that the database has, which is never newer than this program's. */
    static int checkedVersion(Connection connection, Path database) throws SQLException {
        int version = SchemaCheck.number(connection, database);
        if (version > NEWEST) {
            throw new StoreException(
                    StoreFault.WRONG_VERSION,
                    database + " has schema " + version + ", this fermata knows schemas up to " + NEWEST
                            + "; use the newer fermata that wrote it, or another --home");
        }
        return version;
    }

    private static StoreException notAsNumbered(Path database, int number, SQLException e) {
        return new StoreException(
                StoreFault.DAMAGED,
                SqliteFaults.isDamaged(database) + " (it is not what schema " + number + " is: " + e.getMessage() + ")",
                e);
    }

    private static String resource(int number) {
        String name = String.format(Locale.ROOT, "migration-%03d.sql", number);
        try (InputStream in = Migrations.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the jar lacks " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
