package fermata.daemon.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.ToLongFunction;

/** Asks for derived rows and takes none that is not as it was kept. Safe for use by many threads. */
final class DerivedQueries {
    private final Queries queries;

    DerivedQueries(Queries queries) {
        this.queries = queries;
    }

    /**
     * All rows.
     *
     * @param day the column of the practice day, from 1; 0 if there is none
     * @param sum the column of the checksum
     * @param summed the checksum that a row should have
     * @throws UnreadableDerivationException if one cannot be read
     */
    <T> List<T> all(String sql, int day, int sum, Rows.Reader<T> reader, ToLongFunction<T> summed, Object... values) {
        try {
            return queries.read(
                    connection -> Rows.all(connection, sql, row -> checked(row, day, sum, reader, summed), values));
        } catch (StoreException e) {
            if (e.fault() == StoreFault.DAMAGED) {
                throw new UnreadableDerivationException(Optional.empty(), e.getMessage(), e);
            }
            throw e;
        }
    }

    private static <T> T checked(ResultSet row, int day, int sum, Rows.Reader<T> reader, ToLongFunction<T> summed)
            throws SQLException {
        try {
            T read = reader.read(row);
            if (summed.applyAsLong(read) != row.getLong(sum)) {
                throw new UnreadableDerivationException(day(row, day), "a derived row was altered on the disk", null);
            }
            return read;
        } catch (IllegalArgumentException | DateTimeException | NullPointerException e) {
            throw new UnreadableDerivationException(day(row, day), "a derived row was altered on the disk: " + e, e);
        }
    }

    private static Optional<LocalDate> day(ResultSet row, int column) throws SQLException {
        try {
            return column == 0 ? Optional.empty() : Optional.of(LocalDate.parse(row.getString(column)));
        } catch (DateTimeException | NullPointerException altered) {
            return Optional.empty();
        }
    }
}
