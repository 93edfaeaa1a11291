package fermata.daemon.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/** What was derived and may be derived again. Safe for use by many threads. */
public final class Derivations {
    private static final String SOLVES =
            "SELECT id, capture_id, day, started_wall_ms, first_turn, code_version, snapshot_id, json FROM solve ";
    private static final String ORDER = " ORDER BY day, started_wall_ms, capture_id, first_turn";

    private final Queries queries;
    private final Supplier<WriterThread> writer;

    Derivations(Queries queries, Supplier<WriterThread> writer) {
        this.queries = queries;
        this.writer = writer;
    }

    /** Puts what was derived from a capture in the place of what was derived from it before. */
    public void replace(DerivationRow derivation, List<SolveRow> solves) {
        writer.get().write("keep what was derived", connection -> {
            Rows.run(connection, "DELETE FROM derivation WHERE capture_id = ?", derivation.captureId());
            Rows.run(
                    connection,
                    "INSERT INTO derivation VALUES (?, ?, ?, ?, ?, ?, ?)",
                    derivation.captureId(),
                    derivation.codeVersion(),
                    derivation.items(),
                    derivation.heard(),
                    derivation.repaired(),
                    derivation.lost(),
                    derivation.attempts());
            for (SolveRow solve : solves) {
                Rows.run(
                        connection,
                        "INSERT INTO solve VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                        solve.id(),
                        solve.captureId(),
                        solve.day().toString(),
                        solve.startedAt().toEpochMilli(),
                        solve.firstTurn(),
                        solve.codeVersion(),
                        solve.snapshotId(),
                        solve.json());
            }
            return null;
        });
    }

    /** Keeps a night's learned parameters; the same id again changes nothing. */
    public void keepSnapshot(String id, LocalDate day, String json) {
        writer.get()
                .write(
                        "keep a night's parameters",
                        connection -> Rows.run(
                                connection,
                                "INSERT OR IGNORE INTO snapshot VALUES (?, ?, ?)",
                                id,
                                day.toString(),
                                json));
    }

    /** The parameters of that id, as JSON. */
    public Optional<String> snapshot(String id) {
        return queries.read(connection ->
                Rows.all(connection, "SELECT json FROM snapshot WHERE id = ?", row -> row.getString(1), id).stream()
                        .findFirst());
    }

    /** What was derived from a capture. */
    public Optional<DerivationRow> find(long captureId) {
        return queries.read(connection -> Rows.all(
                        connection,
                        "SELECT capture_id, code_version, items, heard, repaired, lost, attempts FROM derivation WHERE"
                                + " capture_id = ?",
                        row -> new DerivationRow(
                                row.getLong(1),
                                row.getString(2),
                                row.getLong(3),
                                row.getLong(4),
                                row.getLong(5),
                                row.getLong(6),
                                row.getLong(7)),
                        captureId)
                .stream()
                .findFirst());
    }

    /** All solves, oldest first. */
    public List<SolveRow> solves() {
        return queries.read(connection -> Rows.all(connection, SOLVES + ORDER, Derivations::row));
    }

    /** The solves of one practice day, oldest first. */
    public List<SolveRow> solves(LocalDate day) {
        return queries.read(
                connection -> Rows.all(connection, SOLVES + "WHERE day = ?" + ORDER, Derivations::row, day.toString()));
    }

    /** One solve. */
    public Optional<SolveRow> solve(String id) {
        return queries.read(connection -> Rows.all(connection, SOLVES + "WHERE id = ?", Derivations::row, id).stream()
                .findFirst());
    }

    private static SolveRow row(ResultSet row) throws SQLException {
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
