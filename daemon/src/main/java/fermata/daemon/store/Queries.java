package fermata.daemon.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;

/**
 * A connection that only reads, shared by whoever asks: one short question at a time, so that no long reader keeps the
 * write-ahead log from being folded back.
 */
final class Queries implements AutoCloseable {
    private final Path database;
    private final Connection connection;

    Queries(Path database, Connection connection) {
        this.database = database;
        this.connection = connection;
    }

    /** Asks one question; all its statements see the same moment. */
    synchronized <T> T read(WriterThread.Work<T> question) {
        try {
            Rows.run(connection, "BEGIN");
            try {
                return question.on(connection);
            } finally {
                Rows.run(connection, "ROLLBACK");
            }
        } catch (SQLException e) {
            throw SqliteFaults.ofReading(database, e);
        }
    }

    @Override
    public synchronized void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw SqliteFaults.of("close the practice", database, e);
        }
    }
}
