package fermata.daemon.store;

import fermata.analysis.event.Hand;
import fermata.analysis.event.Origin;
import fermata.decoder.stream.RawFrame;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BiPredicate;
import java.util.function.Supplier;

/** What the radio said and what files told. Safe for use by many threads. */
public final class Captures {
    private static final String COLUMNS =
            "SELECT c.id, kind, uuid, boot_id, started_wall_ms, started_mono_ns, zone, cube,"
                    + " solver, hand, origin, header, truth, coalesce(p.json, '') FROM capture c"
                    + " LEFT JOIN profile p ON p.id = c.profile_id ";

    private static final String LAST = "coalesce((SELECT connection || '.' || ordinal FROM %s WHERE capture_id = ?1"
            + " ORDER BY connection DESC, ordinal DESC LIMIT 1), '-')";
    private static final String EXTENT =
            String.format(Locale.ROOT, LAST, "frame") + " || ' ' || " + String.format(Locale.ROOT, LAST, "dropped")
                    + " || ' ' || coalesce((SELECT max(ordinal) FROM event WHERE capture_id = ?1), '-')";

    private final Queries queries;
    private final Supplier<WriterThread> writer;

    Captures(Queries queries, Supplier<WriterThread> writer) {
        this.queries = queries;
        this.writer = writer;
    }

    /** A file's stream, to be kept whole. */
    public record ToldStream(CaptureStart start, String header, String truth, List<ToldEvent> events) {
        public ToldStream {
            events = List.copyOf(events);
        }
    }

    /** A hole in a capture: so many frames came while the queue to the disk was full, the first of them then. */
    public record Drop(long atNanos, long frames) {}

    /** Begins a capture of what a cube says and gives the journal for it. */
    public CaptureJournal begin(CaptureStart start, String profileJson, String truth) {
        WriterThread thread = writer.get();
        long id = thread.write("begin a capture", connection -> {
            String hash = new Sha256().add(profileJson).hex();
            Rows.run(connection, "INSERT OR IGNORE INTO profile (hash, json) VALUES (?, ?)", hash, profileJson);
            long profile = Rows.only(connection, "SELECT id FROM profile WHERE hash = ?", row -> row.getLong(1), hash);
            return insert(connection, CaptureKind.RADIO, start, profile, "", truth);
        });
        return new CaptureJournal(thread, id);
    }

    /** The journal of a capture that was begun before, to append to it again. */
    CaptureJournal resume(long captureId) {
        return new CaptureJournal(writer.get(), captureId);
    }

    /**
     * What became of a stream.
     *
     * @param captureId its capture
     * @param isNew whether it was added, or else found there
     */
    public record Kept(long captureId, boolean isNew) {}

    /**
     * Keeps these streams, all or none, each unless it is there already. They are asked for one at a time, by the
     * writer; if asking for one fails, nothing is kept.
     *
     * @param isSame whether a stream is a capture: asked of captures of files that have, or had, the very lines of its
     *     events, and of those from the radio that began at the same millisecond
     */
    public List<Kept> add(Iterator<ToldStream> streams, BiPredicate<ToldStream, CaptureRow> isSame) {
        return writer.get().write("keep what the file tells", connection -> {
            ToldLines.noteMissing(connection);
            List<Kept> kept = new ArrayList<>();
            while (streams.hasNext()) {
                kept.add(addUnlessThere(connection, streams.next(), isSame));
            }
            return kept;
        });
    }

    private static Kept addUnlessThere(
            Connection connection, ToldStream stream, BiPredicate<ToldStream, CaptureRow> isSame) throws SQLException {
        List<CaptureRow> alike = Rows.all(
                connection,
                COLUMNS + "WHERE (kind = 'stream' AND c.id IN (SELECT capture_id FROM told_lines WHERE sha256 = ?))"
                        + " OR (kind = 'radio' AND started_wall_ms = ?) ORDER BY c.id",
                Captures::row,
                ToldLines.of(stream.events()),
                stream.start().startedWall().toEpochMilli());
        for (CaptureRow capture : alike) {
            if (isSame.test(stream, capture)) {
                return new Kept(capture.id(), false);
            }
        }
        long id = insert(connection, CaptureKind.STREAM, stream.start(), null, stream.header(), stream.truth());
        insertEvents(connection, id, 0, stream.events());
        ToldLines.note(connection, id);
        return new Kept(id, true);
    }

    /** Adds events that somebody told to a capture that exists. */
    public void append(long captureId, List<ToldEvent> events) {
        writer.get().write("keep what was told", connection -> {
            boolean isOfFile = isOfFile(connection, captureId);
            if (isOfFile) {
                ToldLines.noteMissing(connection);
            }
            long next = Rows.only(
                    connection,
                    "SELECT coalesce(max(ordinal) + 1, 0) FROM event WHERE capture_id = ?",
                    row -> row.getLong(1),
                    captureId);
            insertEvents(connection, captureId, next, events);
            if (isOfFile) {
                ToldLines.note(connection, captureId);
            }
            return null;
        });
    }

    private static boolean isOfFile(Connection connection, long captureId) throws SQLException {
        return Rows.only(
                connection, "SELECT kind = 'stream' FROM capture WHERE id = ?", row -> row.getBoolean(1), captureId);
    }

    private static void insertEvents(Connection connection, long captureId, long first, List<ToldEvent> events)
            throws SQLException {
        try (var insert = connection.prepareStatement(
                "INSERT INTO event (capture_id, ordinal, version, kind, line) VALUES (?, ?, ?, ?, ?)")) {
            long ordinal = first;
            for (ToldEvent event : events) {
                Rows.bind(insert, captureId, ordinal++, event.version(), event.kind(), event.line());
                insert.executeUpdate();
            }
        }
    }

    private static long insert(
            Connection connection, CaptureKind kind, CaptureStart start, Long profile, String header, String truth)
            throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO capture (uuid, kind, boot_id, started_wall_ms, started_mono_ns, zone, cube, solver, hand,"
                        + " profile_id, origin, header, truth) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                start.uuid().toString(),
                kind.written(),
                start.bootId(),
                start.startedWall().toEpochMilli(),
                start.startedNanos(),
                start.zone().getId(),
                start.origin().cube(),
                start.origin().solver(),
                start.origin().hand().written(),
                profile,
                start.source(),
                header,
                truth);
        return Rows.only(connection, "SELECT last_insert_rowid()", row -> row.getLong(1));
    }

    /** All captures, in the order in which they were begun. */
    public List<CaptureRow> all() {
        return queries.read(connection -> Rows.all(connection, COLUMNS + "ORDER BY c.id", Captures::row));
    }

    /** One capture. */
    public Optional<CaptureRow> find(long captureId) {
        return queries.read(
                connection -> Rows.all(connection, COLUMNS + "WHERE c.id = ?", Captures::row, captureId).stream()
                        .findFirst());
    }

    /**
     * How far a capture goes: its last frame, drop and told event. Differs whenever there is something new to derive
     * from; a step down three indexes.
     */
    public String extent(long captureId) {
        return queries.read(
                connection -> Rows.only(connection, "SELECT " + EXTENT, row -> row.getString(1), captureId));
    }

    /** Every frame of a capture, as it arrived. */
    public List<RawFrame> frames(long captureId) {
        return queries.read(connection -> Rows.all(
                connection,
                "SELECT connection, uuid, arrival_ns, bytes FROM frame JOIN characteristic ON id = characteristic_id"
                        + " WHERE capture_id = ? ORDER BY connection, ordinal",
                row -> new RawFrame(row.getInt(1), UUID.fromString(row.getString(2)), row.getLong(3), row.getBytes(4)),
                captureId));
    }

    /** The holes of our own making, in order. */
    public List<Drop> drops(long captureId) {
        return queries.read(connection -> Rows.all(
                connection,
                "SELECT at_ns, frames FROM dropped WHERE capture_id = ? ORDER BY connection, ordinal",
                row -> new Drop(row.getLong(1), row.getLong(2)),
                captureId));
    }

    /** What was told, in order. */
    public List<ToldEvent> events(long captureId) {
        return queries.read(connection -> Rows.all(
                connection,
                "SELECT kind, version, line FROM event WHERE capture_id = ? ORDER BY ordinal",
                row -> new ToldEvent(row.getString(1), row.getInt(2), row.getString(3)),
                captureId));
    }

    /** What a solver said of a hand, as its line of a turn stream. */
    public record Stated(long captureId, String solver, String line) {}

    /** Everything that solvers said of hands, in the order of the captures. */
    public List<Stated> stated() {
        return stated("hand");
    }

    /** The times that drills taught of solvers, in the order of the captures. */
    public List<Stated> calibrations() {
        return stated("calibration");
    }

    /** The sequences that solvers say they turn, in the order of the captures. */
    public List<Stated> sequences() {
        return stated("sequences");
    }

    private List<Stated> stated(String kind) {
        return queries.read(connection -> Rows.all(
                connection,
                "SELECT capture_id, solver, line FROM event JOIN capture c ON c.id = capture_id"
                        + " WHERE event.kind = ? ORDER BY capture_id, ordinal",
                row -> new Stated(row.getLong(1), row.getString(2), row.getString(3)),
                kind));
    }

    private static CaptureRow row(ResultSet row) throws SQLException {
        Origin origin = new Origin(row.getString(8), row.getString(9), Hand.of(row.getString(10)));
        CaptureStart start = new CaptureStart(
                UUID.fromString(row.getString(3)),
                row.getString(4),
                Instant.ofEpochMilli(row.getLong(5)),
                row.getLong(6),
                ZoneId.of(row.getString(7)),
                origin,
                row.getString(11));
        return new CaptureRow(
                row.getLong(1),
                CaptureKind.of(row.getString(2)),
                start,
                row.getString(14),
                row.getString(12),
                row.getString(13));
    }
}
