package fermata.daemon.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;

/**
 * By which lines a file's capture is known: the SHA-256 of the lines of its events, a line feed after each, for each
 * state that it was in. Works on the writer's connection, within its transaction; holds one line at a time.
 */
final class ToldLines {
    private ToldLines() {}

    /** Notes what all captures of files are known by that were kept when nobody noted it yet. */
    static void noteMissing(Connection connection) throws SQLException {
        List<Long> missing = Rows.all(
                connection,
                "SELECT id FROM capture WHERE kind = 'stream' AND id NOT IN (SELECT capture_id FROM told_lines)",
                row -> row.getLong(1));
        for (long captureId : missing) {
            note(connection, captureId);
        }
    }

    /** Notes what a capture is known by as it is now. */
    static void note(Connection connection, long captureId) throws SQLException {
        Sha256 digest = new Sha256();
        try (PreparedStatement lines =
                connection.prepareStatement("SELECT line FROM event WHERE capture_id = ? ORDER BY ordinal")) {
            Rows.bind(lines, captureId);
            try (ResultSet row = lines.executeQuery()) {
                while (row.next()) {
                    digest.add(row.getString(1)).add("\n");
                }
            }
        }
        Rows.run(
                connection,
                "INSERT OR IGNORE INTO told_lines (sha256, capture_id) VALUES (?, ?)",
                digest.hex(),
                captureId);
    }

    /** What a stream is known by that is not kept yet. */
    static String of(List<ToldEvent> events) {
        Sha256 digest = new Sha256();
        events.forEach(event -> digest.add(event.line()).add("\n"));
        return digest.hex();
    }
}
