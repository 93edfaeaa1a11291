/**
 * Turn streams and reconstructions: files of one JSON object a line, read into events and written from them.
 *
 * <p>{@link fermata.daemon.turnfile.TurnStream} is the main type; {@link fermata.daemon.turnfile.PracticeFile} reads
 * either kind of file, {@link fermata.daemon.turnfile.EventLines} turns lines into events and back. Times are
 * microseconds since the capture began, turns are in the core frame. A line that is wrong refuses the whole file.
 * Source: docs/formats.md.
 */
package fermata.daemon.turnfile;
