package fermata.daemon.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
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
    private final Opening.Found found;
    private final LossNotes notes = new LossNotes();

    private Store(
            Home home, Optional<WriterLock> lock, Optional<WriterThread> writer, Queries queries, Opening.Found found) {
        this.home = home;
        this.lock = lock;
        this.writer = writer;
        this.queries = queries;
        this.found = found;
    }

    /**
     * Opens a home to listen or to recover: makes it where it is missing. A damaged database is set aside, never
     * deleted, and a new one begun: see {@link #setAside()}.
     *
     * @param localNow names the file of what is set aside
     * @throws StoreException with {@link StoreFault#BUSY} if another process writes to this home
     */
    public static Store openForWriting(Home home, Supplier<LocalDateTime> localNow) {
        return open(home, localNow, true);
    }

    /**
     * Opens a home to add to it; makes it where it is missing. A damaged database is left where it is.
     *
     * @param localNow names the copy of a log that is damaged
     * @throws StoreException with {@link StoreFault#BUSY} if another process writes to this home, with
     *     {@link StoreFault#DAMAGED} if it is damaged
     */
    public static Store openToAdd(Home home, Supplier<LocalDateTime> localNow) {
        try {
            return open(home, localNow, false);
        } catch (StoreException e) {
            throw StillReadable.told(home, e);
        }
    }

    private static Store open(Home home, Supplier<LocalDateTime> localNow, boolean setsAside) {
        home.make();
        WriterLock lock = WriterLock.tryTake(home)
                .orElseThrow(() -> new StoreException(
                        StoreFault.BUSY,
                        WriterLock.holder(home) + " is writing to " + home.directory()
                                + "; end it first, or choose another --home"));
        String moment = localNow.get().format(FILE_MOMENT);
        return guarded(lock, () -> writing(home, lock, moment, setsAside));
    }

    /** Opens a home to add to it if nobody else does; empty if somebody does, or if it cannot be written now. */
    public static Optional<Store> tryOpenToAdd(Home home, Supplier<LocalDateTime> localNow) {
        try {
            return Optional.of(openToAdd(home, localNow));
        } catch (StoreException e) {
            if (e.fault().isOnlyOfWriting()) {
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
                throw StillReadable.told(home, e);
            }
            bringUpToDate(home, e);
            connection = Database.openForReading(home);
        }
        Queries queries = new Queries(home.database(), connection);
        return new Store(home, Optional.empty(), Optional.empty(), queries, Opening.Found.ALL_WELL);
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

    private static Store writing(Home home, WriterLock lock, String moment, boolean setsAside) {
        Opening opening = Opening.of(home, moment, setsAside);
        WriterThread writer = new WriterThread(home.database(), opening.connection(), opening.numbering());
        Queries queries = new Queries(home.database(), Database.openForReading(home));
        return new Store(home, Optional.of(lock), Optional.of(writer), queries, opening.found());
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

    /** The directory it lives in. */
    public Home home() {
        return home;
    }

    /** Where a damaged database was put when this one was opened; empty if all was well. */
    public Optional<Path> setAside() {
        return found.setAside();
    }

    /** Where the copy of a log was put that ended too early when this one was opened; empty if all was well. */
    public Optional<Path> keptLog() {
        return found.keptLog();
    }

    /** What was acknowledged and is not there, as far as it is known and was not dismissed. */
    public List<Missing> missing() {
        CountFile.Reading counted = CountFile.read(home.count());
        Acknowledged count = counted.count().orElse(Acknowledged.NOTHING);
        return queries.read(connection -> {
            List<Missing> known = new ArrayList<>(MissingRows.noted(connection));
            List<Missing> named = new ArrayList<>(MissingRows.named(connection));
            known.addAll(Opening.beyond(connection, count));
            named.addAll(Opening.beyond(connection, count));
            for (Missing noticed : notes.missing()) {
                List<Missing> news = noticed.without(known);
                known.addAll(news);
                named.addAll(news);
            }
            return named;
        });
    }

    /** Whether the database ends before what was acknowledged, and nobody has noted that yet. */
    public boolean endsTooEarly() {
        Acknowledged count = FrameRows.count(home.count());
        return queries.read(connection -> !Opening.beyond(connection, count).isEmpty());
    }

    /** What somebody should know of this practice who asks it anything, a sentence each; empty if all is well. */
    public List<String> warnings() {
        return StoreWarnings.of(home, missing(), notes.captures(), found, CountFile.read(home.count()));
    }

    /** What was practised and cannot be read here, a sentence each; known of what was read so far. */
    public List<String> losses() {
        return StoreWarnings.ofRows(missing(), notes.captures());
    }

    /**
     * Brings back what can be read of a damaged database, unless it is there already.
     *
     * @param database its file, or a name whose log alone is there
     * @throws StoreException if its files cannot be read, or this store cannot be written
     */
    public Recovered recover(Path database) {
        Recovered recovered = new Recovery(home, writer()).of(database);
        boolean isOurs =
                SetAside.waiting(home).contains(database.toAbsolutePath().normalize());
        return isOurs ? recovered.movedTo(SetAside.recovered(database)) : recovered;
    }

    /** Names no more what was set aside and what is missing now; deletes nothing. */
    public void dismiss() {
        SetAside.waiting(home).forEach(SetAside::dismissed);
        writer().write("dismiss what is missing", connection -> {
            MissingRows.dismiss(connection);
            return null;
        });
    }

    /** Whether this process may add to it. */
    public boolean isWritable() {
        return writer.isPresent();
    }

    /** What was heard and told. */
    public Captures captures() {
        return new Captures(queries, this::writer, home.count(), notes);
    }

    /** Looks whether what was heard and told is as it was kept. */
    public RowCheck rowCheck() {
        return new RowCheck(captures(), notes, () -> writer);
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
