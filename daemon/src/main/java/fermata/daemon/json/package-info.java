/**
 * JSON as the command line prints it, the pages read it and files hold it.
 *
 * <p>{@link fermata.daemon.json.Json} reads and writes; {@link fermata.daemon.json.JsonLine} is one line of a file with
 * what is needed to name a mistake in it; the {@code ...View} records are the documents of docs/formats.md, member by
 * member in snake case. Times are whole microseconds.
 */
package fermata.daemon.json;
