package fermata.daemon.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** What was derived and may be derived again. Safe for use by many threads. */
public final class Derivations {
    private static final String COLUMNS =
            "id, capture_id, day, started_wall_ms, first_turn, code_version, snapshot_id, summary, sum";
    private static final String SOLVES = "SELECT " + COLUMNS + " FROM solve ";
    private static final String ORDER = " ORDER BY day, started_wall_ms, capture_id, first_turn";
    private static final String NIGHTS = "SELECT day, code_version, snapshot_id, json, sum FROM night ";

    private static final List<String> OF_A_DAY = List.of("solve", "night", "rhythm", "account");

    private final DerivedQueries queries;
    private final Supplier<WriterThread> writer;

    Derivations(Queries queries, Supplier<WriterThread> writer) {
        this.queries = new DerivedQueries(queries);
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
                        "INSERT INTO night (day, code_version, snapshot_id, json, sum) VALUES (?, ?, ?, ?, ?)",
                        row.day().toString(),
                        row.codeVersion(),
                        row.snapshotId(),
                        row.json(),
                        sum(row));
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

    /** Throws away what was derived for a day, so that it is derived again. */
    public void forget(LocalDate day) {
        writer.get().write("throw away what was derived", connection -> {
            Rows.run(
                    connection,
                    "DELETE FROM derivation WHERE capture_id IN (SELECT capture_id FROM solve WHERE day = ?)",
                    day.toString());
            long start = day.atStartOfDay(ZoneOffset.UTC).toInstant().toEpochMilli();
            // What began a day before or after may reach into it, and its solves may be what cannot be read.
            Rows.run(
                    connection,
                    "DELETE FROM derivation WHERE capture_id IN"
                            + " (SELECT id FROM capture WHERE started_wall_ms BETWEEN ? AND ?)",
                    start - Duration.ofDays(2).toMillis(),
                    start + Duration.ofDays(2).toMillis());
            clear(connection, day);
            Rows.run(connection, "DELETE FROM snapshot WHERE day = ?", day.toString());
            return null;
        });
    }

    /** Throws away all that was derived, so that it is derived again. */
    public void forgetAll() {
        writer.get().write("throw away what was derived", connection -> {
            for (String table : OF_A_DAY) {
                Rows.run(connection, "DELETE FROM " + table);
            }
            Rows.run(connection, "DELETE FROM derivation");
            Rows.run(connection, "DELETE FROM snapshot");
            return null;
        });
    }

    private static void clear(Connection connection, LocalDate day) throws SQLException {
        for (String table : OF_A_DAY) {
            Rows.run(connection, "DELETE FROM " + table + " WHERE day = ?", day.toString());
        }
    }

    private static void putRhythms(Connection connection, DerivedRows derived) throws SQLException {
        for (SnapshotRow row : derived.snapshots()) {
            Rows.run(
                    connection,
                    "INSERT OR IGNORE INTO snapshot (id, day, json, sum) VALUES (?, ?, ?, ?)",
                    row.id(),
                    row.day().toString(),
                    row.json(),
                    sum(row));
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
                        + " attempts, sum) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                row.captureId(),
                row.codeVersion(),
                row.extent(),
                row.heard(),
                row.repaired(),
                row.lost(),
                row.attempts(),
                sum(row));
    }

    private static void insert(Connection connection, RhythmRow row) throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO rhythm (day, solver, cube, hand, began_from, snapshot_id, sequences_before,"
                        + " sequences_left, sum) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.day().toString(),
                row.solver(),
                row.cube(),
                row.hand(),
                row.beganFrom(),
                row.snapshotId(),
                row.sequencesBefore(),
                row.sequencesLeft(),
                sum(row));
    }

    private static void insert(Connection connection, SolveRow row, String json) throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO solve (id, capture_id, day, started_wall_ms, first_turn, code_version, snapshot_id,"
                        + " summary, sum, json, json_sum) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.id(),
                row.captureId(),
                row.day().toString(),
                row.startedAt().toEpochMilli(),
                row.firstTurn(),
                row.codeVersion(),
                row.snapshotId(),
                row.summary(),
                sum(row),
                json,
                RowSum.of(row.id(), json));
    }

    private static long sum(NightRow row) {
        return RowSum.of(row.day(), row.codeVersion(), row.snapshotId(), row.json());
    }

    private static long sum(SnapshotRow row) {
        return RowSum.of(row.id(), row.day(), row.json());
    }

    private static long sum(DerivationRow row) {
        return RowSum.of(
                row.captureId(),
                row.codeVersion(),
                row.extent(),
                row.heard(),
                row.repaired(),
                row.lost(),
                row.attempts());
    }

    private static long sum(RhythmRow row) {
        return RowSum.of(
                row.day(),
                row.solver(),
                row.cube(),
                row.hand(),
                row.beganFrom(),
                row.snapshotId(),
                row.sequencesBefore(),
                row.sequencesLeft());
    }

    private static long sum(SolveRow row) {
        return RowSum.of(
                row.id(),
                row.captureId(),
                row.day(),
                row.startedAt().toEpochMilli(),
                row.firstTurn(),
                row.codeVersion(),
                row.snapshotId(),
                row.summary());
    }

    /** The parameters of that id. */
    public Optional<SnapshotRow> snapshot(String id) {
        return queries
                .all(
                        "SELECT id, day, json, sum FROM snapshot WHERE id = ?",
                        2,
                        4,
                        row -> new SnapshotRow(row.getString(1), LocalDate.parse(row.getString(2)), row.getString(3)),
                        Derivations::sum,
                        id)
                .stream()
                .findFirst();
    }

    /** All rhythms that days began from and left, oldest day first. */
    public List<RhythmRow> rhythms() {
        return queries.all(
                "SELECT day, solver, cube, hand, began_from, snapshot_id, sequences_before, sequences_left, sum"
                        + " FROM rhythm ORDER BY day, solver, cube, hand",
                1,
                9,
                row -> new RhythmRow(
                        LocalDate.parse(row.getString(1)),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getString(6),
                        row.getString(7),
                        row.getString(8)),
                Derivations::sum);
    }

    /** What was derived from a capture. */
    public Optional<DerivationRow> find(long captureId) {
        return queries
                .all(
                        "SELECT capture_id, code_version, extent, heard, repaired, lost, attempts, sum FROM derivation"
                                + " WHERE capture_id = ?",
                        0,
                        8,
                        row -> new DerivationRow(
                                row.getLong(1),
                                row.getString(2),
                                row.getString(3),
                                row.getLong(4),
                                row.getLong(5),
                                row.getLong(6),
                                row.getLong(7)),
                        Derivations::sum,
                        captureId)
                .stream()
                .findFirst();
    }

    /** All nights, oldest first. */
    public List<NightRow> nights() {
        return nights("ORDER BY day");
    }

    /** One night. */
    public Optional<NightRow> night(LocalDate day) {
        return nights("WHERE day = ?", day.toString()).stream().findFirst();
    }

    private List<NightRow> nights(String which, Object... values) {
        return queries.all(NIGHTS + which, 1, 5, Derivations::night, Derivations::sum, values);
    }

    /** All solves, oldest first. */
    public List<SolveRow> solves() {
        return queries.all(SOLVES + ORDER, 3, 9, Derivations::solve, Derivations::sum);
    }

    /** The solves of one practice day, oldest first. */
    public List<SolveRow> solves(LocalDate day) {
        return queries.all(
                SOLVES + "WHERE day = ?" + ORDER, 3, 9, Derivations::solve, Derivations::sum, day.toString());
    }

    /** The practice days on which attempts of a capture began, as far as they are derived. */
    public List<LocalDate> days(long captureId) {
        return queries
                .all(SOLVES + "WHERE capture_id = ?", 3, 9, Derivations::solve, Derivations::sum, captureId)
                .stream()
                .map(SolveRow::day)
                .distinct()
                .toList();
    }

    /** One solve in full. */
    public Optional<SolveDocument> solve(String id) {
        Optional<SolveRow> found =
                queries.all(SOLVES + "WHERE id = ?", 3, 9, Derivations::solve, Derivations::sum, id).stream()
                        .findFirst();
        return found.flatMap(row -> queries
                .all(
                        "SELECT day, json, json_sum FROM solve WHERE id = ?",
                        1,
                        3,
                        each -> new SolveDocument(row, each.getString(2)),
                        solve -> RowSum.of(solve.row().id(), solve.json()),
                        id)
                .stream()
                .findFirst());
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
