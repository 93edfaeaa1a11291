package fermata.daemon.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The ledger of what is missing, on the writer's connection within its transaction, or on a reader's. Stateless. */
final class MissingRows {
    private static final String FRAME_NUMBERS = "SELECT number FROM frame WHERE number IS NOT NULL ORDER BY number";
    private static final String EVENT_NUMBERS = "SELECT number FROM event WHERE number IS NOT NULL ORDER BY number";

    private MissingRows() {}

    /** What is named: noted and not dismissed. */
    static List<Missing> named(Connection connection) throws SQLException {
        return of(connection, "WHERE is_dismissed = 0");
    }

    private static List<Missing> dismissed(Connection connection) throws SQLException {
        return of(connection, "WHERE is_dismissed = 1");
    }

    /** All that is noted. */
    static List<Missing> noted(Connection connection) throws SQLException {
        return of(connection, "");
    }

    private static List<Missing> of(Connection connection, String where) throws SQLException {
        return Rows.all(
                connection,
                "SELECT kind, first, last FROM missing " + where + " ORDER BY kind DESC, first",
                row -> new Missing(
                        Missing.Kind.valueOf(row.getString(1).toUpperCase(Locale.ROOT)),
                        row.getLong(2),
                        row.getLong(3)));
    }

    /** Notes some more, as far as they are not noted. */
    static void note(Connection connection, Missing missing) throws SQLException {
        for (Missing part : missing.without(noted(connection))) {
            put(connection, part, false);
        }
    }

    private static void put(Connection connection, Missing missing, boolean isDismissed) throws SQLException {
        Rows.run(
                connection,
                "INSERT OR REPLACE INTO missing (kind, first, last, is_dismissed) VALUES (?, ?, ?, ?)",
                written(missing.kind()),
                missing.first(),
                missing.last(),
                isDismissed ? 1 : 0);
    }

    private static String written(Missing.Kind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }

    /** Names no more what is noted now. */
    static void dismiss(Connection connection) throws SQLException {
        Rows.run(connection, "UPDATE missing SET is_dismissed = 1");
    }

    /**
     * Looks which numbers up to these are there and notes the others; what was noted stays so while its row is altered.
     * Reads every row's number if the sums differ, else counts.
     */
    static void recount(Connection connection, Acknowledged known) throws SQLException {
        recount(connection, Missing.Kind.FRAME, "SELECT count(number) FROM frame", FRAME_NUMBERS, known.frames());
        recount(connection, Missing.Kind.EVENT, "SELECT count(number) FROM event", EVENT_NUMBERS, known.events());
    }

    private static void recount(Connection connection, Missing.Kind kind, String counting, String numbers, long last)
            throws SQLException {
        long there = Rows.only(connection, counting, row -> row.getLong(1));
        List<Missing> noted = noted(connection).stream()
                .filter(missing -> missing.kind() == kind)
                .toList();
        if (there + noted.stream().mapToLong(Missing::count).sum() == last) {
            return;
        }
        List<Missing> dismissed = dismissed(connection);
        Rows.run(connection, "DELETE FROM missing WHERE kind = ?", written(kind));
        List<Missing> found = new ArrayList<>(gaps(connection, kind, numbers, last));
        for (Missing each : noted) {
            for (Missing altered : AlteredRows.of(connection, each)) {
                found.addAll(altered.without(List.copyOf(found)));
            }
        }
        for (Missing each : found) {
            put(connection, each, dismissed.stream().anyMatch(known -> known.covers(each)));
        }
    }

    private static List<Missing> gaps(Connection connection, Missing.Kind kind, String numbers, long last)
            throws SQLException {
        List<Missing> gaps = new ArrayList<>();
        long before = 0;
        try (PreparedStatement statement = connection.prepareStatement(numbers);
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                // One beyond the last was altered.
                long number = Math.min(row.getLong(1), last + 1);
                if (number > before + 1) {
                    gaps.add(new Missing(kind, before + 1, number - 1));
                }
                before = Math.max(before, number);
            }
        }
        if (before < last) {
            gaps.add(new Missing(kind, before + 1, last));
        }
        return gaps;
    }
}
