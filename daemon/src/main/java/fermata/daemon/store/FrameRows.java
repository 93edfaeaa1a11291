package fermata.daemon.store;

import fermata.decoder.stream.RawFrame;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads a capture's frames and sees by their numbers and checksums which are missing or altered. One use, within one
 * question.
 */
final class FrameRows {
    private static final Pattern UUIDS =
            Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}", Pattern.CASE_INSENSITIVE);

    private final Connection connection;
    private final long captureId;
    private final List<RawFrame> frames = new ArrayList<>();
    private final List<Captures.Drop> holes = new ArrayList<>();
    private final List<Missing> missing = new ArrayList<>();
    private final List<String> uuids = new ArrayList<>();
    private OptionalLong before = OptionalLong.empty();
    private long lastNanos;

    private FrameRows(Connection connection, long captureId) {
        this.connection = connection;
        this.captureId = captureId;
    }

    /**
     * What was read.
     *
     * @param frames those that are as they were heard, in order
     * @param holes where others were, in order
     * @param missing the others' numbers
     */
    record Read(List<RawFrame> frames, List<Captures.Drop> holes, List<Missing> missing) {}

    /**
     * Reads them.
     *
     * @param count how much was acknowledged before the question began
     */
    static Read of(Connection connection, long captureId, Acknowledged count) throws SQLException {
        FrameRows rows = new FrameRows(connection, captureId);
        rows.begin();
        Rows.all(
                connection,
                "SELECT connection, ordinal, arrival_ns, uuid, bytes, number, sum FROM frame LEFT JOIN characteristic"
                        + " ON id = characteristic_id WHERE capture_id = ? ORDER BY connection, ordinal",
                rows::take,
                captureId);
        rows.end(count);
        return new Read(rows.frames, rows.holes, rows.missing);
    }

    private void begin() throws SQLException {
        before = number("SELECT frames_before FROM capture WHERE id = ?");
        // A characteristic whose own row was altered is found again by the frames' checksums.
        Rows.all(connection, "SELECT uuid FROM characteristic", row -> uuids.add(row.getString(1)));
        String profile = "SELECT json FROM profile JOIN capture c ON c.profile_id = profile.id WHERE c.id = ?";
        for (String json : Rows.all(connection, profile, row -> row.getString(1), captureId)) {
            Matcher matcher = UUIDS.matcher(json);
            while (matcher.find()) {
                uuids.add(matcher.group().toLowerCase(java.util.Locale.ROOT));
            }
        }
    }

    private OptionalLong number(String sql) throws SQLException {
        return Rows.all(
                        connection,
                        sql,
                        row -> {
                            long number = row.getLong(1);
                            return row.wasNull() ? OptionalLong.empty() : OptionalLong.of(number);
                        },
                        captureId)
                .stream()
                .findFirst()
                .orElse(OptionalLong.empty());
    }

    private Void take(ResultSet row) throws SQLException {
        long arrival = row.getLong(3);
        byte[] bytes = row.getBytes(5);
        long number = row.getLong(6);
        boolean isNumbered = !row.wasNull();
        long sum = row.getLong(7);
        if (!isNumbered) {
            String uuid = row.getString(4);
            if (uuid != null && UUIDS.matcher(uuid).matches()) {
                frames.add(new RawFrame(row.getInt(1), UUID.fromString(uuid), arrival, bytes));
            }
            return null;
        }
        String uuid = heardOn(row.getLong(1), row.getLong(2), arrival, row.getString(4), bytes, number, sum);
        if (uuid != null) {
            passTo(number - 1, arrival);
            before = OptionalLong.of(Math.max(number, before.orElse(0)));
            lastNanos = arrival;
            frames.add(new RawFrame(row.getInt(1), UUID.fromString(uuid), arrival, bytes));
        } else if (before.isEmpty()) {
            before = OptionalLong.of(number - 1);
        }
        // Its number may be what was altered: the next that is whole tells which is missing.
        return null;
    }

    /** The characteristic by which the checksum is right; null if none is. */
    private String heardOn(long link, long ordinal, long arrival, String stored, byte[] bytes, long number, long sum) {
        if (stored != null && sum(captureId, link, ordinal, arrival, stored, bytes, number) == sum) {
            return stored;
        }
        for (String uuid : uuids) {
            if (sum(captureId, link, ordinal, arrival, uuid, bytes, number) == sum) {
                return uuid;
            }
        }
        return null;
    }

    /** Frames up to this number should have come; what of them has not leaves a hole. */
    private void passTo(long number, long atNanos) {
        if (before.isPresent() && number > before.getAsLong()) {
            missing.add(new Missing(Missing.Kind.FRAME, before.getAsLong() + 1, number));
            holes.add(new Captures.Drop(atNanos, number - before.getAsLong()));
        }
        if (before.isEmpty() || number > before.getAsLong()) {
            before = OptionalLong.of(number);
        }
    }

    private void end(Acknowledged count) throws SQLException {
        if (before.isPresent()) {
            OptionalLong next = number("SELECT frames_before FROM capture WHERE id > ? AND frames_before IS NOT NULL"
                    + " ORDER BY id LIMIT 1");
            passTo(next.orElse(count.frames()), lastNanos);
        }
    }

    /** The checksum of a frame. */
    static long sum(
            long captureId, long connection, long ordinal, long arrivalNanos, String uuid, byte[] bytes, long number) {
        return RowSum.of(captureId, connection, ordinal, arrivalNanos, uuid, bytes, number);
    }

    /** The checksum of an event. */
    static long sum(long captureId, long ordinal, ToldEvent event, long number) {
        return RowSum.of(captureId, ordinal, event.version(), event.kind(), event.line(), number);
    }

    /** The count that a question needs, asked for before it begins: rows are there before they are counted. */
    static Acknowledged count(Path file) {
        return CountFile.read(file).count().orElse(Acknowledged.NOTHING);
    }
}
