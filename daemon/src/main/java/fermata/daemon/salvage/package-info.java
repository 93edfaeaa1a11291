/**
 * Reads what can still be read of a damaged database, without SQLite: page by page, row by row.
 *
 * <p>{@link fermata.daemon.salvage.Salvage} is the main type. It takes a database's file and its write-ahead log, of
 * which either may be missing or damaged at any byte, and gives every record on their pages that has the shape of a row
 * that is kept for ever. All such rows are appended and never altered, so that an old image of a page tells as true as
 * a new one; whether a row is as it was written is told by its checksum, by whoever asks. One page is in memory at a
 * time, and where to find the others.
 *
 * <p>Source: sqlite.org/fileformat2.html, sections 1.5 (b-tree pages), 1.6 (overflow), 2.1 (records), 4.1 (the log).
 */
package fermata.daemon.salvage;
