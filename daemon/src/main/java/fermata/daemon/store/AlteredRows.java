package fermata.daemon.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** Looks whether rows that were noted are there and still not as they were kept. Stateless. */
final class AlteredRows {
    private AlteredRows() {}

    /** The parts of what was noted whose rows are there and altered. Reads their captures. */
    static List<Missing> of(Connection connection, Missing noted) throws SQLException {
        List<Missing> found = new ArrayList<>();
        for (Missing each :
                noted.kind() == Missing.Kind.FRAME ? frames(connection, noted) : events(connection, noted)) {
            each.sharedWith(noted).ifPresent(found::add);
        }
        return found;
    }

    private static List<Missing> frames(Connection connection, Missing noted) throws SQLException {
        List<Long> captures = Rows.all(
                connection,
                "SELECT DISTINCT capture_id FROM frame WHERE number BETWEEN ? AND ?",
                row -> row.getLong(1),
                noted.first(),
                noted.last());
        List<Missing> altered = new ArrayList<>();
        for (long capture : captures) {
            altered.addAll(
                    FrameRows.of(connection, capture, Acknowledged.NOTHING).missing());
        }
        return altered;
    }

    private static List<Missing> events(Connection connection, Missing noted) throws SQLException {
        List<Missing> altered = new ArrayList<>();
        Rows.all(
                connection,
                "SELECT capture_id, ordinal, kind, version, line, number, sum FROM event WHERE number BETWEEN ? AND ?",
                row -> {
                    ToldEvent event = new ToldEvent(row.getString(3), row.getInt(4), row.getString(5));
                    long number = row.getLong(6);
                    if (FrameRows.sum(row.getLong(1), row.getLong(2), event, number) != row.getLong(7)) {
                        altered.add(new Missing(Missing.Kind.EVENT, number, number));
                    }
                    return null;
                },
                noted.first(),
                noted.last());
        return altered;
    }
}
