package fermata.daemon.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Whether a database's description of itself is what this program's migrations make of it. Stateless. */
final class SchemaCheck {
    private static final String NUMBERED = "SELECT count(*) FROM sqlite_schema WHERE name = 'schema_number'";
    private static final String OBJECTS =
            "SELECT type || ' ' || name || ' ' || tbl_name || ' ' || coalesce(sql, '') FROM sqlite_schema";

    private SchemaCheck() {}

    /**
     * The schema's number; it stands in the header and, since schema 7, in a table as well.
     *
     * @throws StoreException with {@link StoreFault#DAMAGED} if the two differ
     */
    static int number(Connection connection, Path database) throws SQLException {
        int header = Rows.only(connection, "PRAGMA user_version", row -> row.getInt(1));
        boolean isNumbered = Rows.only(connection, NUMBERED, row -> row.getBoolean(1));
        long table = isNumbered
                ? Rows.only(connection, "SELECT coalesce(max(number), 0) FROM schema_number", row -> row.getLong(1))
                : header;
        boolean isPlausible = isNumbered || header >= 0 && header < Migrations.FIRST_NUMBERED;
        if (table != header || !isPlausible) {
            throw damaged(database, "its header says schema " + header + ", its tables do not");
        }
        return header;
    }

    /**
     * Compares tables, indexes and triggers with what the migrations make; others may be there too.
     *
     * @throws StoreException with {@link StoreFault#DAMAGED} if one is missing or altered
     */
    static void objects(Connection connection, Path database) throws SQLException {
        Set<String> there = new HashSet<>(Rows.all(connection, OBJECTS, row -> row.getString(1)));
        for (String expected : Expected.OBJECTS) {
            if (!there.contains(expected)) {
                String name = expected.substring(0, expected.indexOf(' ', expected.indexOf(' ') + 1));
                throw damaged(database, name + " of its schema is missing or altered");
            }
        }
    }

    private static StoreException damaged(Path database, String why) {
        return new StoreException(StoreFault.DAMAGED, SqliteFaults.isDamaged(database) + " (" + why + ")");
    }

    /** Made once, by the migrations themselves. */
    private static final class Expected {
        static final List<String> OBJECTS = make();

        private static List<String> make() {
            try (Connection memory = DriverManager.getConnection("jdbc:sqlite::memory:")) {
                Migrations.apply(memory, Path.of("memory"));
                return Rows.all(memory, SchemaCheck.OBJECTS, row -> row.getString(1));
            } catch (SQLException e) {
                throw new IllegalStateException("the migrations fail on an empty database", e);
            }
        }
    }
}
