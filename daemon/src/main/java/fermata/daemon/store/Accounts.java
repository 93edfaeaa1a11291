package fermata.daemon.store;

import fermata.analysis.event.Event;
import fermata.analysis.event.Hand;
import fermata.analysis.hotspot.Series;
import fermata.analysis.record.Method;
import fermata.analysis.record.Outcome;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;

/** What sums over nights read of the solves. Safe for use by many threads. */
public final class Accounts {
    private static final String SELECT = "SELECT day, started_wall_ms, solve_id, solver, cube, hand, method, set_aside,"
            + " outcome, time_us, json, sum FROM account ";
    private static final String SERIES = "solver = ? AND cube = ? AND hand = ? AND method = ? AND set_aside = ?";
    private static final String TIMED = "outcome = '" + Outcome.SOLVED.name() + "' AND time_us IS NOT NULL";

    private final DerivedQueries queries;

    Accounts(Queries queries) {
        this.queries = new DerivedQueries(queries);
    }

    /** Those of one practice day, oldest first. For many days ask day by day: a year does not fit a small board. */
    public List<AccountRow> of(LocalDate day) {
        return ask("WHERE day = ? ORDER BY started_wall_ms, solve_id", day.toString());
    }

    /**
     * The solved and timed ones of the same series before one, newest first, at most so many.
     *
     * @param except leaves these days out
     */
    public List<AccountRow> before(AccountRow row, Set<LocalDate> except, int most) {
        List<Object> values = new ArrayList<>(List.of(
                row.day().toString(),
                row.startedAt().toEpochMilli(),
                row.solveId(),
                row.series().solver(),
                row.series().cube(),
                row.series().hand().name(),
                row.series().method().name(),
                row.series().isSetAside() ? 1 : 0));
        except.forEach(day -> values.add(day.toString()));
        values.add(most);
        String others = String.join(", ", Collections.nCopies(except.size(), "?"));
        return ask(
                "WHERE (day, started_wall_ms, solve_id) < (?, ?, ?) AND " + SERIES + " AND " + TIMED
                        + " AND day NOT IN (" + others + ")"
                        + " ORDER BY day DESC, started_wall_ms DESC, solve_id DESC LIMIT ?",
                values.toArray());
    }

    /**
     * The solved ones before a day, not set aside, newest first, at most so many.
     *
     * @param except leaves these days out
     */
    public List<AccountRow> before(
            LocalDate day, String solver, String cube, Hand hand, Set<LocalDate> except, int most) {
        List<Object> values = new ArrayList<>(List.of(day.toString(), solver, cube, hand.name()));
        except.forEach(other -> values.add(other.toString()));
        values.add(most);
        return ask(
                "WHERE day < ? AND solver = ? AND cube = ? AND hand = ? AND set_aside = 0 AND outcome = '"
                        + Outcome.SOLVED.name() + "' AND day NOT IN ("
                        + String.join(", ", Collections.nCopies(except.size(), "?")) + ")"
                        + " ORDER BY day DESC, started_wall_ms DESC, solve_id DESC LIMIT ?",
                values.toArray());
    }

    private List<AccountRow> ask(String which, Object... values) {
        return queries.all(SELECT + which, 1, 12, Accounts::account, Accounts::sum, values);
    }

    private static long sum(AccountRow row) {
        return RowSum.of(
                row.day(),
                row.startedAt().toEpochMilli(),
                row.solveId(),
                row.series().solver(),
                row.series().cube(),
                row.series().hand().name(),
                row.series().method().name(),
                row.series().isSetAside(),
                row.outcome().name(),
                row.timeMicros(),
                row.json());
    }

    static void insert(Connection connection, AccountRow row) throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO account (day, started_wall_ms, solve_id, solver, cube, hand, method, set_aside,"
                        + " outcome, time_us, json, sum) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                row.day().toString(),
                row.startedAt().toEpochMilli(),
                row.solveId(),
                row.series().solver(),
                row.series().cube(),
                row.series().hand().name(),
                row.series().method().name(),
                row.series().isSetAside() ? 1 : 0,
                row.outcome().name(),
                row.timeMicros() == Event.NO_TIME ? null : row.timeMicros(),
                row.json(),
                sum(row));
    }

    private static AccountRow account(ResultSet row) throws SQLException {
        long time = row.getLong(10);
        long timeMicros = row.wasNull() ? Event.NO_TIME : time;
        return new AccountRow(
                row.getString(3),
                LocalDate.parse(row.getString(1)),
                Instant.ofEpochMilli(row.getLong(2)),
                new Series(
                        row.getString(4),
                        row.getString(5),
                        Hand.valueOf(row.getString(6)),
                        Method.valueOf(row.getString(7)),
                        row.getInt(8) == 1),
                Outcome.valueOf(row.getString(9)),
                timeMicros,
                row.getString(11));
    }
}
