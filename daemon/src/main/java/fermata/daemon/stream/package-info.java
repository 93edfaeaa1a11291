/**
 * Turn streams and reconstructions: files of one JSON object a line, read into events and written from them.
 *
 * <p>{@link fermata.daemon.stream.TurnStream} is the main type; {@link fermata.daemon.stream.PracticeFile} reads either
 * kind of file, {@link fermata.daemon.stream.EventLines} turns lines into events and back. Times are microseconds since
 * the capture began, turns are in the core frame. A line that is wrong refuses the whole file. Source: docs/formats.md.
 */
package fermata.daemon.stream;
