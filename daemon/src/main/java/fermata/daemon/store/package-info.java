/**
 * The practice on the disk: one SQLite database in a home directory, written by one thread of one process.
 *
 * <p>{@link fermata.daemon.store.Store} is the main type. It takes what a capture hands over
 * ({@link fermata.daemon.store.CaptureJournal}) and what files tell ({@link fermata.daemon.store.Captures}), keeps
 * both for ever, and keeps what was derived from them until a newer version derives it again. Times are nanoseconds or
 * microseconds as the names say; wall time is milliseconds since 1970. A failure is a
 * {@link fermata.daemon.store.StoreException} that says what, where and what to do.
 *
 * <p>Source: sqlite.org/wal.html, sqlite.org/howtocorrupt.html (why the file is never opened but by SQLite, and why the
 * lock is a file of its own).
 */
package fermata.daemon.store;
