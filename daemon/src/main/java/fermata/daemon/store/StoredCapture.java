package fermata.daemon.store;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.UUID;

/**
 * A capture's row as it was found on the disk.
 *
 * @param id its number
 * @param row what it says; empty if it cannot be read, or cannot be trusted
 * @param isAltered whether it is not as it was written
 */
record StoredCapture(long id, Optional<CaptureRow> row, boolean isAltered) {
    /** To select from {@code capture c}; what {@link #of} reads. */
    static final String COLUMNS = "SELECT c.id, kind, uuid, boot_id, started_wall_ms, started_mono_ns, zone, cube,"
            + " solver, hand, origin, header, truth, coalesce(p.json, ''), coalesce(p.hash, ''), c.sum, is_dated"
            + " FROM capture c LEFT JOIN profile p ON p.id = c.profile_id ";

    /** Reads a row. Rows of older programs carry no checksum and are trusted as far as they can be read. */
    static StoredCapture of(ResultSet row) throws SQLException {
        long id = row.getLong(1);
        Optional<CaptureRow> read = read(row);
        long sum = row.getLong(16);
        boolean isSummed = !row.wasNull();
        boolean isAltered = read.isEmpty() || isSummed && sum != sum(read.get());
        boolean isWithoutProfile = !row.getString(14).isEmpty()
                && !new Sha256().add(row.getString(14)).hex().equals(row.getString(15));
        boolean isUsable = !isWithoutProfile
                && read.filter(found -> !isAltered || found.kind() == CaptureKind.RADIO)
                        .isPresent();
        return new StoredCapture(id, isUsable ? read : Optional.empty(), isAltered || isWithoutProfile);
    }

    private static Optional<CaptureRow> read(ResultSet row) throws SQLException {
        try {
            Origin origin = new Origin(row.getString(8), row.getString(9), Hand.of(row.getString(10)));
            CaptureStart start = new CaptureStart(
                    UUID.fromString(row.getString(3)),
                    row.getString(4),
                    Instant.ofEpochMilli(row.getLong(5)),
                    row.getBoolean(17),
                    row.getLong(6),
                    ZoneId.of(row.getString(7)),
                    origin,
                    row.getString(11));
            return Optional.of(new CaptureRow(
                    row.getLong(1),
                    CaptureKind.of(row.getString(2)),
                    start,
                    row.getString(14),
                    row.getString(12),
                    row.getString(13)));
        } catch (IllegalArgumentException | DateTimeException | NullPointerException altered) {
            return Optional.empty();
        }
    }

    /** The checksum of what never changes of a capture; civil time may be set right later. */
    static long sum(CaptureRow row) {
        return sum(row.id(), row.kind(), row.start(), row.header(), row.truth());
    }

    static long sum(long id, CaptureKind kind, CaptureStart start, String header, String truth) {
        return RowSum.of(
                id,
                kind.written(),
                start.uuid(),
                start.bootId(),
                start.startedNanos(),
                start.zone().getId(),
                start.origin().cube(),
                start.origin().solver(),
                start.origin().hand().written(),
                start.source(),
                header,
                truth);
    }
}
