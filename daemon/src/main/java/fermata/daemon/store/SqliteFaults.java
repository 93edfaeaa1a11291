package fermata.daemon.store;

import java.nio.file.Path;
import java.sql.SQLException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Puts SQLite's result codes into words, once. Source of the codes: sqlite.org/rescode.html. */
final class SqliteFaults {
    private static final int PRIMARY_CODE_BITS = 0xFF;

    private SqliteFaults() {}

    /**
     * @param doing what was being done, to follow "cannot"
     * @param database where
     */
    static StoreException of(String doing, Path database, SQLException failure) {
        StoreFault fault = faultOf(failure);
        String message = "cannot " + doing + ": " + advice(fault, database) + said(failure);
        return new StoreException(fault, message, failure);
    }

    private static StoreFault faultOf(SQLException failure) {
        return isWithoutRoomToShare(failure)
                ? StoreFault.DISK_FULL
                : classify(failure.getErrorCode() & PRIMARY_CODE_BITS);
    }

    /** What is damaged, what can be read of it and what to do. */
    static String isDamaged(Path database) {
        return database + " is damaged and left as it is; fermata recover brings back what can still be read, fermata"
                + " backup holds what you kept";
    }

    private static String said(SQLException failure) {
        return " (SQLite says: " + oneLine(failure.getMessage()) + ")";
    }

    /**
     * The same of what is only read: another home would not answer the question.
     *
     * @param database where
     */
    static StoreException ofReading(Path database, SQLException failure) {
        StoreFault fault = faultOf(failure);
        String message = "cannot read the practice: "
                + switch (fault) {
                    case READ_ONLY ->
                        database + " may not be opened; check its permissions and those of " + database.getParent();
                    case DAMAGED -> isDamaged(database);
                    default -> advice(fault, database);
                }
                + said(failure);
        return new StoreException(fault, message, failure);
    }

    /**
     * The same of a copy.
     *
     * @param database what is copied
     * @param copy where to
     */
    static StoreException ofCopying(Path database, Path copy, SQLException failure) {
        StoreFault fault = faultOf(failure);
        String message = "cannot write a backup of " + database + " to " + copy + ": "
                + switch (fault) {
                    case DISK_FULL -> "the disk that holds it is full; free some space there, or name a FILE elsewhere";
                    case READ_ONLY -> "it or its directory may not be written; name a FILE elsewhere";
                    case DAMAGED -> database + " is damaged; keep the backups that you have";
                    default -> advice(fault, database);
                }
                + said(failure);
        return new StoreException(fault, message, failure);
    }

    /** The file that readers and the writer share did not find room to grow; the plain code only says I/O error. */
    private static boolean isWithoutRoomToShare(SQLException failure) {
        return failure instanceof SQLiteException told && told.getResultCode() == SQLiteErrorCode.SQLITE_IOERR_SHMSIZE;
    }

    private static StoreFault classify(int code) {
        return switch (code) {
            case 13 -> StoreFault.DISK_FULL; // SQLITE_FULL
            case 10 -> StoreFault.DISK_FAILING; // SQLITE_IOERR: EIO, EDQUOT, a failed fsync
            case 5, 6 -> StoreFault.BUSY; // SQLITE_BUSY, SQLITE_LOCKED
            case 3, 8, 14 -> StoreFault.READ_ONLY; // SQLITE_PERM, SQLITE_READONLY, SQLITE_CANTOPEN
            case 11, 26 -> StoreFault.DAMAGED; // SQLITE_CORRUPT, SQLITE_NOTADB
            default -> StoreFault.BROKEN;
        };
    }

    private static String advice(StoreFault fault, Path database) {
        return switch (fault) {
            case DISK_FULL ->
                "the disk that holds " + database + " is full; free some space there, nothing that was"
                        + " acknowledged is lost";
            case DISK_FAILING ->
                "the disk that holds " + database
                        + " answers with errors; check it, its cable and its quota (dmesg says"
                        + " more), nothing that was acknowledged is lost";
            case BUSY -> "another process holds " + database + "; wait for it or end it";
            case READ_ONLY ->
                database + " or its directory may not be written or opened; check the permissions of "
                        + database.getParent() + " and that its file system is not mounted read-only, or choose another"
                        + " --home";
            case DAMAGED -> database + " is damaged; it is left as it is; fermata recover brings back what can be read";
            case WRONG_VERSION, OUTDATED, BROKEN -> "SQLite failed on " + database;
        };
    }

    private static String oneLine(String text) {
        return text == null ? "nothing" : text.replaceAll("\\s+", " ");
    }
}
