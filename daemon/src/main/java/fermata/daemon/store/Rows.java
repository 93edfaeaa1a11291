package fermata.daemon.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** The few things that each query needs. */
final class Rows {
    private Rows() {}

    /** Reads one row. */
    interface Reader<T> {
        T read(ResultSet row) throws SQLException;
    }

    static void bind(PreparedStatement statement, Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
    }

    static int run(Connection connection, String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            bind(statement, values);
            return statement.executeUpdate();
        }
    }

    static <T> List<T> all(Connection connection, String sql, Reader<T> reader, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            bind(statement, values);
            List<T> rows = new ArrayList<>();
            try (ResultSet result = statement.executeQuery()) {
                while (result.next()) {
                    rows.add(reader.read(result));
                }
            }
            return rows;
        }
    }

    /** The first row; there must be one. */
    static <T> T only(Connection connection, String sql, Reader<T> reader, Object... values) throws SQLException {
        List<T> rows = all(connection, sql, reader, values);
        if (rows.isEmpty()) {
            throw new SQLException("no row for: " + sql);
        }
        return rows.get(0);
    }
}
