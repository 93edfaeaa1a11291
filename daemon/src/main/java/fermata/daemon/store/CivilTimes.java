package fermata.daemon.store;

import fermata.daemon.time.CivilReading;
import fermata.daemon.time.ClockProof;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Keeps what clocks said while captures ran, and sets the beginnings of captures right by it. Monotonic time goes on
 * from start to start of the machine, so that one known date dates all that was heard since the machine was started.
 * Safe for use by many threads.
 */
public final class CivilTimes {
    private static final String SAME_BOOT =
            "FROM civil_time t JOIN capture c ON c.id = t.capture_id WHERE c.kind = 'radio'"
                    + " AND c.boot_id = (SELECT boot_id FROM capture WHERE id = ?1)"
                    + " AND (c.id = ?1 OR c.boot_id <> 'unknown')";

    private final Supplier<WriterThread> writer;

    CivilTimes(Supplier<WriterThread> writer) {
        this.writer = writer;
    }

    private record Undated(long captureId, long startedNanos, long slept) {}

    /**
     * Keeps a reading that was made while a capture ran. If the date is known by it, the capture begins when that says;
     * so do captures since the machine was started whose date nobody knew. If not, an earlier one of the same start
     * may know it.
     *
     * @return civil time of the capture's beginning, if it is known by now
     */
    public Optional<Instant> note(long captureId, CivilReading reading) {
        return writer.get().write("keep what the clocks say", connection -> {
            insert(connection, captureId, reading);
            Optional<CivilReading> known =
                    reading.isKnown() ? Optional.of(reading) : newestKnown(connection, captureId);
            if (known.isPresent()) {
                for (Undated capture : toBeDated(connection, captureId, reading.isKnown())) {
                    date(connection, capture, known.get());
                }
            }
            return Rows.all(
                            connection,
                            "SELECT started_wall_ms FROM capture WHERE id = ? AND is_dated = 1",
                            row -> Instant.ofEpochMilli(row.getLong(1)),
                            captureId)
                    .stream()
                    .findFirst();
        });
    }

    private static void insert(Connection connection, long captureId, CivilReading reading) throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO civil_time SELECT ?1, coalesce(max(ordinal) + 1, 0), ?2, ?3, ?4, ?5 FROM civil_time"
                        + " WHERE capture_id = ?1",
                captureId,
                reading.atNanos(),
                reading.asleepNanos(),
                reading.wall().toEpochMilli(),
                reading.proof().written());
    }

    private static Optional<CivilReading> newestKnown(Connection connection, long captureId) throws SQLException {
        return Rows.all(
                        connection,
                        "SELECT t.at_ns, t.asleep_ns, t.wall_ms, t.proof " + SAME_BOOT
                                + " AND t.proof <> 'none' ORDER BY t.capture_id DESC, t.ordinal DESC LIMIT 1",
                        CivilTimes::reading,
                        captureId)
                .stream()
                .findFirst();
    }

    private static CivilReading reading(ResultSet row) throws SQLException {
        return new CivilReading(
                Instant.ofEpochMilli(row.getLong(3)), row.getLong(1), row.getLong(2), ClockProof.of(row.getString(4)));
    }

    /** The captures of the same start of the machine that have no date; the one itself even if it has one. */
    private static List<Undated> toBeDated(Connection connection, long captureId, boolean isAnew) throws SQLException {
        return Rows.all(
                connection,
                "SELECT c.id, c.started_mono_ns, t.asleep_ns " + SAME_BOOT
                        + " AND t.ordinal = 0 AND (c.is_dated = 0 OR c.id = ?1 AND ?2)",
                row -> new Undated(row.getLong(1), row.getLong(2), row.getLong(3)),
                captureId,
                isAnew ? 1 : 0);
    }

    private static void date(Connection connection, Undated capture, CivilReading known) throws SQLException {
        Rows.run(
                connection,
                "UPDATE capture SET started_wall_ms = ?, is_dated = 1 WHERE id = ?",
                known.at(capture.startedNanos(), capture.slept()).toEpochMilli(),
                capture.captureId());
    }
}
