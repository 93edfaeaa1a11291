package fermata.daemon.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Supplier;

/**
 * The practice of one home: open it, ask it, add to it, close it.
 *
 * <p>One process at a time writes to a home; any number read, also meanwhile. Safe for use by many threads.
 */
public final class Store implements AutoCloseable {
    private static final DateTimeFormatter FILE_MOMENT = DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss");

    private final Home home;
    private final Optional<WriterLock> lock;
    private final Optional<WriterThread> writer;
    private final Queries queries;
    private final Optional<Path> setAside;

    private Store(
            Home home,
            Optional<WriterLock> lock,
            Optional<WriterThread> writer,
            Queries queries,
            Optional<Path> setAside) {
        this.home = home;
        this.lock = lock;
        this.writer = writer;
        this.queries = queries;
        this.setAside = setAside;
    }

    /**
     * Opens a home to write and read; makes it where it is missing. A damaged database is set aside, never deleted, and
     * a new one begun: see {@link #setAside()}.
     *
     * @param localNow names the file of a database that is set aside
     * @throws StoreException with {@link StoreFault#BUSY} if another process writes to this home
     */
    public static Store openForWriting(Home home, Supplier<LocalDateTime> localNow) {
        home.make();
        WriterLock lock = WriterLock.tryTake(home)
                .orElseThrow(() -> new StoreException(
                        StoreFault.BUSY,
                        WriterLock.holder(home) + " is writing to " + home.directory()
                                + "; end it first, or choose another --home"));
        return guarded(lock, () -> writing(home, lock, localNow));
    }

    /** Opens a home to write if nobody else does; empty if somebody does, or if it cannot be written. */
    public static Optional<Store> tryOpenForWriting(Home home, Supplier<LocalDateTime> localNow) {
        try {
            return Optional.of(openForWriting(home, localNow));
        } catch (StoreException e) {
            if (e.fault() == StoreFault.BUSY || e.fault() == StoreFault.READ_ONLY) {
                return Optional.empty();
            }
            throw e;
        }
    }

    /**
     * Opens a home to read; what an older program left is brought up to date first.
     *
     * @throws StoreException if there is none, or it cannot be read, or is older and cannot be written now
     */
    public static Store openForReading(Home home) {
        Connection connection;
        try {
            connection = Database.openForReading(home);
        } catch (StoreException e) {
            if (e.fault() != StoreFault.OUTDATED) {
                throw e;
            }
            bringUpToDate(home, e);
            connection = Database.openForReading(home);
        }
        Queries queries = new Queries(home.database(), connection);
        return new Store(home, Optional.empty(), Optional.empty(), queries, Optional.empty());
    }

    private static void bringUpToDate(Home home, StoreException outdated) {
        WriterLock lock = lockToUpdate(home, outdated);
        try {
            Database.bringUpToDate(home);
        } finally {
            lock.close();
        }
    }

    private static WriterLock lockToUpdate(Home home, StoreException outdated) {
        try {
            return WriterLock.tryTake(home)
                    .orElseThrow(() -> new StoreException(
                            StoreFault.BUSY,
                            outdated.getMessage() + ", and " + WriterLock.holder(home)
                                    + " is writing to it; end it, then ask again: that brings it up to date"));
        } catch (StoreException e) {
            if (e.fault() != StoreFault.READ_ONLY) {
                throw e;
            }
            String what = outdated.getMessage() + " and must be brought up to date where it can be written: ";
            throw new StoreException(StoreFault.READ_ONLY, what + e.getMessage(), e);
        }
    }

    private static Store writing(Home home, WriterLock lock, Supplier<LocalDateTime> localNow) {
        Optional<Path> setAside = Optional.empty();
        WriterThread writer;
        try {
            writer = new WriterThread(home.database(), Database.openForWriting(home));
        } catch (StoreException e) {
            if (e.fault() != StoreFault.DAMAGED) {
                throw e;
            }
            setAside = Optional.of(setAside(home, localNow.get().format(FILE_MOMENT)));
            writer = new WriterThread(home.database(), Database.openForWriting(home));
        }
        Queries queries = new Queries(home.database(), Database.openForReading(home));
        return new Store(home, Optional.of(lock), Optional.of(writer), queries, setAside);
    }

    private static Store guarded(WriterLock lock, Supplier<Store> opening) {
        Store store = null;
        try {
            store = opening.get();
            return store;
        } finally {
            if (store == null) {
                lock.close();
            }
        }
    }

    private static Path setAside(Home home, String moment) {
        Path aside = Path.of(home.database() + ".damaged-" + moment);
        try {
            for (String companion : List.of("", "-wal", "-shm")) {
                Path file = Path.of(home.database() + companion);
                if (Files.exists(file)) {
                    Files.move(file, Path.of(aside + companion));
                }
            }
            return aside;
        } catch (IOException e) {
            throw new StoreException(
                    StoreFault.READ_ONLY,
                    home.database() + " is damaged and cannot be set aside as " + aside + ": " + FileFaults.reason(e),
                    e);
        }
    }

    /** The directory it lives in. */
    public Home home() {
        return home;
    }

    /** Where a damaged database was put when this one was opened; empty if all was well. */
    public Optional<Path> setAside() {
        return setAside;
    }

    /** Whether this process may add to it. */
    public boolean isWritable() {
        return writer.isPresent();
    }

    /** What was heard and told. */
    public Captures captures() {
        return new Captures(queries, this::writer);
    }

    /** What clocks said while it was heard. */
    public CivilTimes civilTimes() {
        return new CivilTimes(this::writer);
    }

    /** What was derived from it. */
    public Derivations derivations() {
        return new Derivations(queries, this::writer);
    }

    /** What sums over nights read of the solves. */
    public Accounts accounts() {
        return new Accounts(queries);
    }

    /** Bytes of the database by its own count of pages, the write-ahead log not included. */
    public long bytes() {
        return queries.read(connection -> Rows.only(connection, "PRAGMA page_count", row -> row.getLong(1))
                * Rows.only(connection, "PRAGMA page_size", row -> row.getLong(1)));
    }

    /** Lets the database grow to so many bytes and no further, or without a bound again. */
    void limitBytes(OptionalLong bytes) {
        writer().write("limit the database", connection -> {
            long pageBytes = Rows.only(connection, "PRAGMA page_size", row -> row.getLong(1));
            long pages = bytes.isPresent() ? bytes.getAsLong() / pageBytes : Integer.MAX_VALUE;
            return Rows.only(connection, "PRAGMA max_page_count = " + pages, row -> row.getLong(1));
        });
    }

    private WriterThread writer() {
        return writer.orElseThrow(() -> new IllegalStateException(home.directory() + " was opened to read only"));
    }

    /** Ends the writer after what was handed to it. */
    @Override
    public void close() {
        try {
            queries.close();
            writer.ifPresent(WriterThread::close);
        } finally {
            lock.ifPresent(WriterLock::close);
        }
    }
}
