package fermata.daemon.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;

/**
 * Where a capture of a damaged database is in the practice.
 *
 * @param id its number there
 * @param isNew whether it was not there before
 * @param keepsNumbers whether its frames and events keep their numbers
 */
record RecoveredCapture(long id, boolean isNew, boolean keepsNumbers) {
    /** Puts it there unless it is there; on the writer's connection, within its transaction. */
    static RecoveredCapture put(
            Connection connection, SourceRows.Found found, Optional<String> profile, boolean keepsNumbers)
            throws SQLException {
        CaptureRow row = found.row();
        List<Long> same = ids(connection, "uuid = ?", row.start().uuid().toString());
        if (!same.isEmpty()) {
            return new RecoveredCapture(same.get(0), false, keepsNumbers && same.get(0) == row.id());
        }
        boolean isFree = ids(connection, "id = ?", row.id()).isEmpty();
        boolean isSame = isFree && keepsNumbers && found.isSummed();
        Long profileId = profile.isPresent() ? profileId(connection, profile.get()) : null;
        Rows.run(
                connection,
                "INSERT INTO capture (id, uuid, kind, boot_id, started_wall_ms, started_mono_ns, zone, cube, solver,"
                        + " hand, profile_id, origin, header, truth, is_dated, frames_before)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                isFree ? row.id() : null,
                row.start().uuid().toString(),
                row.kind().written(),
                row.start().bootId(),
                row.start().startedWall().toEpochMilli(),
                row.start().startedNanos(),
                row.start().zone().getId(),
                row.start().origin().cube(),
                row.start().origin().solver(),
                row.start().origin().hand().written(),
                profileId,
                row.start().source(),
                row.header(),
                row.truth(),
                found.isDated(),
                isSame && found.framesBefore().isPresent()
                        ? found.framesBefore().getAsLong()
                        : null);
        long id = ids(connection, "uuid = ?", row.start().uuid().toString()).get(0);
        Rows.run(
                connection,
                "UPDATE capture SET sum = ? WHERE id = ?",
                StoredCapture.sum(id, row.kind(), row.start(), row.header(), row.truth()),
                id);
        return new RecoveredCapture(id, true, isSame);
    }

    private static List<Long> ids(Connection connection, String which, Object value) throws SQLException {
        return Rows.all(connection, "SELECT id FROM capture WHERE " + which, row -> row.getLong(1), value);
    }

    private static long profileId(Connection connection, String json) throws SQLException {
        String hash = new Sha256().add(json).hex();
        Rows.run(connection, "INSERT OR IGNORE INTO profile (hash, json) VALUES (?, ?)", hash, json);
        return Rows.only(connection, "SELECT id FROM profile WHERE hash = ?", row -> row.getLong(1), hash);
    }
}
