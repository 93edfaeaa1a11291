package fermata.daemon.store;

import fermata.daemon.salvage.SalvagedRow;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Puts rows of captures where they belong, each once. Those that keep their numbers go there at once, the others wait
 * in a table of their own until all are there, since numbers rise with the keys. One use a transaction.
 */
final class RecoveredRows {
    private static final String FRAME = "iiiiibii";
    private static final String OLD_FRAME = "iiiiib";
    private static final String EVENT = "iiittii";
    private static final String OLD_EVENT = "iiitt";
    private static final String LINK = "iiiitt";
    private static final String DROPPED = "iiiii";
    private static final String CIVIL_TIME = "iiiiit";
    private static final String OUTAGE = "iiiti";
    private static final List<String> WANTED =
            List.of(FRAME, OLD_FRAME, EVENT, OLD_EVENT, LINK, DROPPED, CIVIL_TIME, OUTAGE);
    private static final Set<String> LINK_WORDS =
            Set.of("discovered", "refused", "connected", "resolved", "subscribed", "lost", "service");
    private static final int LONGEST_FRAME_BYTES = 600;

    private final Connection connection;
    private final SourceRows source;
    private long frames;
    private long events;
    private long alreadyThere;

    RecoveredRows(Connection connection, SourceRows source) {
        this.connection = connection;
        this.source = source;
    }

    /** How many rows were added, and how many were there. */
    record Tally(long frames, long events, long alreadyThere) {}

    Tally tally() {
        return new Tally(frames, events, alreadyThere);
    }

    /** Makes the table in which rows wait; it goes with the connection. */
    static void stage(Connection connection) throws SQLException {
        Rows.run(
                connection,
                "CREATE TEMP TABLE IF NOT EXISTS unnumbered (capture_id, connection, ordinal, arrival_ns, uuid, bytes,"
                        + " version, kind, line, PRIMARY KEY (capture_id, connection, ordinal)) WITHOUT ROWID");
        Rows.run(connection, "DELETE FROM unnumbered");
    }

    /** Whether it has the shape of such a row. */
    static boolean isWanted(SalvagedRow row) {
        return WANTED.stream().anyMatch(row::hasKinds) && row.number(1) >= 0 && row.number(2) >= 0;
    }

    void put(SalvagedRow row, RecoveredCapture capture) throws SQLException {
        if (row.hasKinds(FRAME) || row.hasKinds(OLD_FRAME)) {
            putFrame(row, capture);
        } else if (row.hasKinds(EVENT) || row.hasKinds(OLD_EVENT)) {
            putEvent(row, capture);
        } else if (row.isListed()) {
            putOther(row, capture.id());
        }
    }

    private void putFrame(SalvagedRow row, RecoveredCapture capture) throws SQLException {
        Optional<String> uuid = heardOn(row);
        if (uuid.isEmpty()) {
            return;
        }
        if (!capture.keepsNumbers() || row.hasKinds(OLD_FRAME)) {
            stage(capture, row.number(1), row.number(2), row.number(3), uuid.get(), row.bytes(5), null);
            return;
        }
        putConnection(capture.id(), row.number(1), row.number(3));
        int added = Rows.run(
                connection,
                "INSERT OR IGNORE INTO frame (capture_id, connection, ordinal, arrival_ns, characteristic_id, bytes,"
                        + " number, sum) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                capture.id(),
                row.number(1),
                row.number(2),
                row.number(3),
                characteristic(connection, uuid.get()),
                row.bytes(5),
                row.number(6),
                row.number(7));
        frames += added;
        alreadyThere += 1 - added;
    }

    /** The characteristic by which the frame's checksum is right. */
    private Optional<String> heardOn(SalvagedRow row) {
        if (row.hasKinds(OLD_FRAME)) {
            boolean isLikely = row.isListed()
                    && row.bytes(5).length > 0
                    && row.bytes(5).length <= LONGEST_FRAME_BYTES
                    && row.number(3) > 0;
            return source.characteristics(row.number(4)).stream().findFirst().filter(first -> isLikely);
        }
        return source.heardOn(row);
    }

    private void putEvent(SalvagedRow row, RecoveredCapture capture) throws SQLException {
        ToldEvent event = new ToldEvent(row.text(3), (int) row.number(2), row.text(4));
        boolean isOld = row.hasKinds(OLD_EVENT);
        boolean isSound = isOld
                ? row.isListed() && row.text(4).startsWith("{")
                : FrameRows.sum(row.number(0), row.number(1), event, row.number(5)) == row.number(6);
        if (!isSound) {
            return;
        }
        if (isOld || !capture.keepsNumbers()) {
            stage(capture, -1, row.number(1), 0, "", new byte[0], event);
            return;
        }
        int added = Rows.run(
                connection,
                "INSERT OR IGNORE INTO event (capture_id, ordinal, version, kind, line, number, sum)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?)",
                capture.id(),
                row.number(1),
                event.version(),
                event.kind(),
                event.line(),
                row.number(5),
                row.number(6));
        events += added;
        alreadyThere += 1 - added;
    }

    private void stage(
            RecoveredCapture capture, long link, long ordinal, long arrival, String uuid, byte[] bytes, ToldEvent event)
            throws SQLException {
        Rows.run(
                connection,
                "INSERT OR IGNORE INTO unnumbered (capture_id, connection, ordinal, arrival_ns, uuid, bytes, version,"
                        + " kind, line) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                capture.id(),
                link,
                ordinal,
                arrival,
                uuid,
                bytes,
                event == null ? 0 : event.version(),
                event == null ? "" : event.kind(),
                event == null ? "" : event.line());
    }

    /** Rows that carry no checksum: taken where they are likely. */
    private void putOther(SalvagedRow row, long captureId) throws SQLException {
        if (row.hasKinds(LINK) && LINK_WORDS.contains(row.text(4))) {
            putConnection(captureId, row.number(1), row.number(3));
            putAsItIs("link_event", row, captureId);
        } else if (row.hasKinds(DROPPED) && row.number(4) > 0 && row.number(3) > 0) {
            putConnection(captureId, row.number(1), row.number(3));
            putAsItIs("dropped", row, captureId);
        } else if (row.hasKinds(CIVIL_TIME)
                && Set.of("none", "network", "battery", "person").contains(row.text(5))) {
            putAsItIs("civil_time", row, captureId);
        } else if (row.hasKinds(OUTAGE) && row.text(3).matches("[A-Z_]+") && row.number(4) >= 0) {
            putAsItIs("outage", row, captureId);
        }
    }

    private void putAsItIs(String table, SalvagedRow row, long captureId) throws SQLException {
        Object[] values = row.values().toArray();
        values[0] = captureId;
        String marks = String.join(", ", java.util.Collections.nCopies(values.length, "?"));
        Rows.run(connection, "INSERT OR IGNORE INTO " + table + " VALUES (" + marks + ")", values);
    }

    private void putConnection(long captureId, long number, long atNanos) throws SQLException {
        putConnection(connection, captureId, number, atNanos);
    }

    private static void putConnection(Connection connection, long captureId, long number, long atNanos)
            throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO connection (capture_id, number, first_ns) VALUES (?, ?, ?) ON CONFLICT DO UPDATE"
                        + " SET first_ns = min(first_ns, excluded.first_ns)",
                captureId,
                number,
                atNanos);
    }

    private static long characteristic(Connection connection, String uuid) throws SQLException {
        Rows.run(connection, "INSERT OR IGNORE INTO characteristic (uuid) VALUES (?)", uuid);
        return Rows.only(connection, "SELECT id FROM characteristic WHERE uuid = ?", row -> row.getLong(1), uuid);
    }

    /** Numbers what waited, in the order of its keys. */
    static Tally number(Connection connection, Numbering numbering) throws SQLException {
        long[] tally = new long[3];
        Rows.all(connection, "SELECT * FROM unnumbered ORDER BY capture_id, connection, ordinal", row -> {
            boolean isEvent = row.getLong(2) < 0;
            boolean isAdded =
                    isEvent ? numberEvent(connection, numbering, row) : numberFrame(connection, numbering, row);
            tally[isAdded ? isEvent ? 1 : 0 : 2]++;
            return null;
        });
        return new Tally(tally[0], tally[1], tally[2]);
    }

    private static boolean numberFrame(Connection connection, Numbering numbering, ResultSet row) throws SQLException {
        long capture = row.getLong(1);
        long link = row.getLong(2);
        long ordinal = row.getLong(3);
        long arrival = row.getLong(4);
        long number = numbering.nextFrame();
        putConnection(connection, capture, link, arrival);
        int added = Rows.run(
                connection,
                "INSERT OR IGNORE INTO frame (capture_id, connection, ordinal, arrival_ns, characteristic_id, bytes,"
                        + " number, sum) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                capture,
                link,
                ordinal,
                arrival,
                characteristic(connection, row.getString(5)),
                row.getBytes(6),
                number,
                FrameRows.sum(capture, link, ordinal, arrival, row.getString(5), row.getBytes(6), number));
        if (added == 1) {
            numbering.tookFrame();
        }
        return added == 1;
    }

    private static boolean numberEvent(Connection connection, Numbering numbering, ResultSet row) throws SQLException {
        ToldEvent event = new ToldEvent(row.getString(8), row.getInt(7), row.getString(9));
        long number = numbering.nextEvent();
        int added = Rows.run(
                connection,
                "INSERT OR IGNORE INTO event (capture_id, ordinal, version, kind, line, number, sum)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?)",
                row.getLong(1),
                row.getLong(3),
                event.version(),
                event.kind(),
                event.line(),
                number,
                FrameRows.sum(row.getLong(1), row.getLong(3), event, number));
        if (added == 1) {
            numbering.tookEvent();
        }
        return added == 1;
    }
}
