package fermata.daemon.store;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Locale;
import java.util.Optional;

/**
 * Numbers frames and events as they are added, and counts in the count file what was committed. Owned by the writer's
 * thread; numbers that a transaction took are given back if it fails.
 */
final class Numbering implements AutoCloseable {
    private final Path path;
    private final CountFile file;
    private Optional<Acknowledged> onFile;
    private Acknowledged committed;
    private Acknowledged taken;

    private Numbering(Path path, CountFile file, Optional<Acknowledged> onFile, Acknowledged committed) {
        this.path = path;
        this.file = file;
        this.onFile = onFile;
        this.committed = committed;
        this.taken = committed;
    }

    /** Counts on from what the database and the count file say; call {@link #committed()} once that is settled. */
    static Numbering open(Path path, Optional<Acknowledged> onFile, Acknowledged known) {
        try {
            return new Numbering(path, CountFile.open(path), onFile, known);
        } catch (IOException e) {
            throw failed(path, e);
        }
    }

    /** The number that the next frame has. */
    long nextFrame() {
        return taken.frames() + 1;
    }

    /** A frame was added under that number. */
    void tookFrame() {
        taken = new Acknowledged(taken.frames() + 1, taken.events(), taken.captures());
    }

    /** The number that the next event has. */
    long nextEvent() {
        return taken.events() + 1;
    }

    /** An event was added under that number. */
    void tookEvent() {
        taken = new Acknowledged(taken.frames(), taken.events() + 1, taken.captures());
    }

    /** A capture was begun. */
    void tookCapture(long id) {
        taken = taken.orMore(new Acknowledged(0, 0, id));
    }

    /** What is committed so far. */
    Acknowledged count() {
        return committed;
    }

    /** What is taken so far, in the transaction that runs. */
    Acknowledged taken() {
        return taken;
    }

    /** What was taken is in the database; when this returns, it is counted. */
    void committed() {
        committed = taken;
        if (!onFile.equals(Optional.of(committed))) {
            try {
                file.write(committed);
                onFile = Optional.of(committed);
            } catch (IOException e) {
                throw failed(path, e);
            }
        }
    }

    /** What was taken is not in the database. */
    void rolledBack() {
        taken = committed;
    }

    private static StoreException failed(Path path, IOException e) {
        String reason = FileFaults.reason(e);
        boolean isFull = String.valueOf(reason).toLowerCase(Locale.ROOT).contains("no space left");
        return new StoreException(
                isFull ? StoreFault.DISK_FULL : StoreFault.DISK_FAILING,
                "cannot count in " + path + " what is acknowledged: " + reason
                        + (isFull ? "; free some space there" : "; check the disk (dmesg says what it answers)"),
                e);
    }

    /**
     * What the rows of a database say. A few steps down its keys: numbers rise with the keys, and rows of older
     * programs, which have none, come before all that have.
     */
    static Acknowledged of(Connection connection) throws SQLException {
        long frames = number(
                connection, "SELECT number FROM frame ORDER BY capture_id DESC, connection DESC, ordinal DESC LIMIT 1");
        long events = number(connection, "SELECT max(number) FROM event WHERE number IS NOT NULL");
        long captures = number(connection, "SELECT max(id) FROM capture");
        return new Acknowledged(Math.max(0, frames), Math.max(0, events), Math.max(0, captures));
    }

    private static long number(Connection connection, String sql) throws SQLException {
        return Rows.all(connection, sql, row -> row.getLong(1)).stream()
                .findFirst()
                .orElse(0L);
    }

    @Override
    public void close() {
        try {
            file.close();
        } catch (IOException e) {
            throw failed(path, e);
        }
    }
}
