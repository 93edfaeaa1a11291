package fermata.daemon.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * The one thread that writes, with the one connection that can.
 *
 * <p>Any thread may call {@link #write}; the pieces of work run one after the other, each in a transaction that took
 * the write lock at its start, because a read that later wants to write fails at once with BUSY and is never retried.
 */
final class WriterThread implements AutoCloseable {
    /** Nobody hears turns meanwhile, but frames may come. */
    private static final int FOLD_TIMEOUT_MILLIS = 250;

    private final Path database;
    private final Connection connection;
    private final Numbering numbering;
    private final ExecutorService thread;

    /** Work on the connection; its statements are one transaction. */
    interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    WriterThread(Path database, Connection connection, Numbering numbering) {
        this.database = database;
        this.connection = connection;
        this.numbering = numbering;
        thread = Executors.newSingleThreadExecutor(work -> new Thread(work, "fermata-store-writer"));
    }

    /**
     * Does the work and waits until it is on the disk.
     *
     * @param doing what it does, to follow "cannot" in an error
     * @throws StoreException if it failed; then nothing of it was kept
     */
    <T> T write(String doing, Work<T> work) {
        Future<T> done = thread.submit(() -> transact(doing, work));
        return await(done);
    }

    /** Numbers what is added; for work on this thread only. */
    Numbering numbering() {
        return numbering;
    }

    /**
     * Writes the log back into the database and empties it, so that damage to it can cost nothing; false if somebody is
     * reading just now.
     */
    boolean fold() {
        return await(thread.submit(() -> {
            try {
                waitAtMost(FOLD_TIMEOUT_MILLIS);
                return Rows.only(connection, "PRAGMA wal_checkpoint(TRUNCATE)", row -> row.getInt(1) == 0);
            } catch (SQLException e) {
                throw SqliteFaults.of("write the log back", database, e);
            } finally {
                waitAtMost(Database.BUSY_TIMEOUT_MILLIS);
            }
        }));
    }

    private void waitAtMost(int millis) throws SQLException {
        Rows.only(connection, "PRAGMA busy_timeout = " + millis, row -> row.getInt(1));
    }

    private <T> T transact(String doing, Work<T> work) {
        T result;
        try {
            Rows.run(connection, "BEGIN IMMEDIATE");
            try {
                result = work.on(connection);
                Rows.run(connection, "COMMIT");
            } catch (SQLException | RuntimeException e) {
                numbering.rolledBack();
                rollBack(e);
                throw e;
            }
        } catch (SQLException e) {
            throw SqliteFaults.of(doing, database, e);
        }
        // After the commit, so that nothing is counted that may not be there; before the answer, which acknowledges.
        numbering.committed();
        return result;
    }

    private void rollBack(Exception because) {
        try {
            Rows.run(connection, "ROLLBACK");
        } catch (SQLException e) {
            // SQLite has rolled back by itself after some failures, a full disk among them.
            because.addSuppressed(e);
        }
    }

    private static <T> T await(Future<T> done) {
        boolean interrupted = false;
        try {
            while (true) {
                try {
                    return done.get();
                } catch (InterruptedException e) {
                    // What was handed to the writer is not left half known: the answer is worth the wait.
                    interrupted = true;
                }
            }
        } catch (ExecutionException e) {
            throw asUnchecked(e.getCause());
        } finally {
            if (interrupted) {
                Thread.currentThread().interrupt();
            }
        }
    }

    private static RuntimeException asUnchecked(Throwable cause) {
        if (cause instanceof Error error) {
            throw error;
        }
        return cause instanceof RuntimeException runtime ? runtime : new IllegalStateException(cause);
    }

    /** Ends the thread after the work that was handed in, and closes the connection. */
    @Override
    public void close() {
        CompletableFuture<Void> closed = new CompletableFuture<>();
        thread.execute(() -> {
            try {
                connection.close();
                numbering.close();
                closed.complete(null);
            } catch (SQLException e) {
                closed.completeExceptionally(SqliteFaults.of("close the practice", database, e));
            } catch (StoreException e) {
                closed.completeExceptionally(e);
            }
        });
        thread.shutdown();
        await(closed);
    }
}
