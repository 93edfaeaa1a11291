package fermata.daemon.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** What was derived and may be derived again. Safe for use by many threads. */
public final class Derivations {
    private static final String COLUMNS =
            "id, capture_id, day, started_wall_ms, first_turn, code_version, snapshot_id, summary";
    private static final String SOLVES = "SELECT " + COLUMNS + " FROM solve ";
    private static final String ORDER = " ORDER BY day, started_wall_ms, capture_id, first_turn";
    private static final String NIGHTS = "SELECT day, code_version, snapshot_id, json FROM night ";

    private final Queries queries;
    private final Supplier<WriterThread> writer;

    Derivations(Queries queries, Supplier<WriterThread> writer) {
        this.queries = queries;
        this.writer = writer;
    }

    /** Puts these results in the place of what was derived for their captures and days before. */
    public void replace(DerivedRows derived) {
        writer.get().write("keep what was derived", connection -> {
            for (LocalDate day : derived.days()) {
                clear(connection, day);
            }
            for (DerivationRow row : derived.captures()) {
                insert(connection, row);
            }
            putRhythms(connection, derived);
            for (NightRow row : derived.nights()) {
                Rows.run(
                        connection,
                        "INSERT INTO night (day, code_version, snapshot_id, json) VALUES (?, ?, ?, ?)",
                        row.day().toString(),
                        row.codeVersion(),
                        row.snapshotId(),
                        row.json());
            }
            for (SolveDocument solve : derived.solves()) {
                insert(connection, solve.row(), solve.json());
            }
            for (AccountRow row : derived.accounts()) {
                Accounts.insert(connection, row);
            }
            return null;
        });
    }

    private static void clear(Connection connection, LocalDate day) throws SQLException {
        for (String table : List.of("solve", "night", "rhythm", "account")) {
            Rows.run(connection, "DELETE FROM " + table + " WHERE day = ?", day.toString());
        }
    }

    private static void putRhythms(Connection connection, DerivedRows derived) throws SQLException {
        for (SnapshotRow row : derived.snapshots()) {
            Rows.run(
                    connection,
                    "INSERT OR IGNORE INTO snapshot (id, day, json) VALUES (?, ?, ?)",
                    row.id(),
                    row.day().toString(),
                    row.json());
        }
        for (RhythmRow row : derived.rhythms()) {
            insert(connection, row);
        }
        for (LocalDate day : derived.days()) {
            // A day that grows leaves a rhythm each time it is derived; nobody asks for the earlier ones.
            Rows.run(
                    connection,
                    "DELETE FROM snapshot WHERE day = ? AND id NOT IN (SELECT snapshot_id FROM rhythm)",
                    day.toString());
        }
    }

    private static void insert(Connection connection, DerivationRow row) throws SQLException {
        Rows.run(
                connection,
                "INSERT OR REPLACE INTO derivation (capture_id, code_version, extent, heard, repaired, lost,"
                        + " attempts) VALUES (?, ?, ?, ?, ?, ?, ?)",
                row.captureId(),
                row.codeVersion(),
                row.extent(),
                row.heard(),
                row.repaired(),
                row.lost(),
                row.attempts());
    }

    private static void insert(Connection connection, RhythmRow row) throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO rhythm (day, solver, cube, hand, began_from, snapshot_id, sequences_before,"
                        + " sequences_left) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                row.day().toString(),
                row.solver(),
                row.cube(),
                row.hand(),
                row.beganFrom(),
                row.snapshotId(),
                row.sequencesBefore(),
                row.sequencesLeft());
    }

    private static void insert(Connection connection, SolveRow row, String json) throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO solve (id, capture_id, day, started_wall_ms, first_turn, code_version, snapshot_id,"
                        + " summary, json) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.id(),
                row.captureId(),
                row.day().toString(),
                row.startedAt().toEpochMilli(),
                row.firstTurn(),
                row.codeVersion(),
                row.snapshotId(),
                row.summary(),
                json);
    }

    /** The parameters of that id. */
    public Optional<SnapshotRow> snapshot(String id) {
        return first(
                "SELECT id, day, json FROM snapshot WHERE id = ?",
                row -> new SnapshotRow(row.getString(1), LocalDate.parse(row.getString(2)), row.getString(3)),
                id);
    }

    /** All rhythms that days began from and left, oldest day first. */
    public List<RhythmRow> rhythms() {
        return queries.read(connection -> Rows.all(
                connection,
                "SELECT day, solver, cube, hand, began_from, snapshot_id, sequences_before, sequences_left FROM rhythm"
                        + " ORDER BY day, solver, cube, hand",
                row -> new RhythmRow(
                        LocalDate.parse(row.getString(1)),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getString(6),
                        row.getString(7),
                        row.getString(8))));
    }

    /** What was derived from a capture. */
    public Optional<DerivationRow> find(long captureId) {
        return first(
                "SELECT capture_id, code_version, extent, heard, repaired, lost, attempts FROM derivation WHERE"
                        + " capture_id = ?",
                row -> new DerivationRow(
                        row.getLong(1),
                        row.getString(2),
                        row.getString(3),
                        row.getLong(4),
                        row.getLong(5),
                        row.getLong(6),
                        row.getLong(7)),
                captureId);
    }

    /** All nights, oldest first. */
    public List<NightRow> nights() {
        return queries.read(connection -> Rows.all(connection, NIGHTS + "ORDER BY day", Derivations::night));
    }

    /** One night. */
    public Optional<NightRow> night(LocalDate day) {
        return first(NIGHTS + "WHERE day = ?", Derivations::night, day.toString());
    }

    /** All solves, oldest first. */
    public List<SolveRow> solves() {
        return queries.read(connection -> Rows.all(connection, SOLVES + ORDER, Derivations::solve));
    }

    /** The solves of one practice day, oldest first. */
    public List<SolveRow> solves(LocalDate day) {
        return queries.read(connection ->
                Rows.all(connection, SOLVES + "WHERE day = ?" + ORDER, Derivations::solve, day.toString()));
    }

    /** The practice days on which attempts of a capture began, as far as they are derived. */
    public List<LocalDate> days(long captureId) {
        return queries.read(connection -> Rows.all(
                connection,
                "SELECT DISTINCT day FROM solve WHERE capture_id = ?",
                row -> LocalDate.parse(row.getString(1)),
                captureId));
    }

    /** One solve in full. */
    public Optional<SolveDocument> solve(String id) {
        return first(
                "SELECT " + COLUMNS + ", json FROM solve WHERE id = ?",
                row -> new SolveDocument(solve(row), row.getString(9)),
                id);
    }

    private <T> Optional<T> first(String sql, Rows.Reader<T> reader, Object value) {
        return queries.read(
                connection -> Rows.all(connection, sql, reader, value).stream().findFirst());
    }

    private static NightRow night(ResultSet row) throws SQLException {
        return new NightRow(LocalDate.parse(row.getString(1)), row.getString(2), row.getString(3), row.getString(4));
    }

    private static SolveRow solve(ResultSet row) throws SQLException {
        return new SolveRow(
                row.getString(1),
                row.getLong(2),
                LocalDate.parse(row.getString(3)),
                Instant.ofEpochMilli(row.getLong(4)),
                row.getInt(5),
                row.getString(6),
                row.getString(7),
                row.getString(8));
    }
}
