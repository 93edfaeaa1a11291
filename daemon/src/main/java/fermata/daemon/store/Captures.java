package fermata.daemon.store;

import fermata.decoder.stream.RawFrame;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Supplier;

/** What the radio said and what files told. Safe for use by many threads. */
public final class Captures {
    private static final String LAST = "coalesce((SELECT connection || '.' || ordinal FROM %s WHERE capture_id = ?1"
            + " ORDER BY connection DESC, ordinal DESC LIMIT 1), '-')";
    private static final String EXTENT =
            String.format(Locale.ROOT, LAST, "frame") + " || ' ' || " + String.format(Locale.ROOT, LAST, "dropped")
                    + " || ' ' || coalesce((SELECT max(ordinal) FROM event WHERE capture_id = ?1), '-')";

    private final Queries queries;
    private final Supplier<WriterThread> writer;
    private final Path count;
    private final LossNotes notes;

    Captures(Queries queries, Supplier<WriterThread> writer, Path count, LossNotes notes) {
        this.queries = queries;
        this.writer = writer;
        this.count = count;
        this.notes = notes;
    }

    /** A file's stream, to be kept whole. */
    public record ToldStream(CaptureStart start, String header, String truth, List<ToldEvent> events) {
        public ToldStream {
            events = List.copyOf(events);
        }
    }

    /** A hole in a capture: so many frames are not kept, the first of them came then or later. */
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
     *     events, and of those from the radio that began at the same millisecond, or nobody knows when
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

    private Kept addUnlessThere(Connection connection, ToldStream stream, BiPredicate<ToldStream, CaptureRow> isSame)
            throws SQLException {
        List<StoredCapture> alike = Rows.all(
                connection,
                StoredCapture.COLUMNS
                        + "WHERE (kind = 'stream' AND c.id IN (SELECT capture_id FROM told_lines WHERE sha256 = ?))"
                        + " OR (kind = 'radio' AND (started_wall_ms = ? OR is_dated = 0)) ORDER BY c.id",
                StoredCapture::of,
                ToldLines.of(stream.events()),
                stream.start().startedWall().toEpochMilli());
        for (StoredCapture capture : alike) {
            if (capture.row().filter(row -> isSame.test(stream, row)).isPresent()) {
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

    private void insertEvents(Connection connection, long captureId, long first, List<ToldEvent> events)
            throws SQLException {
        Numbering numbering = writer.get().numbering();
        try (var insert =
                connection.prepareStatement("INSERT INTO event (capture_id, ordinal, version, kind, line, number, sum)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?)")) {
            long ordinal = first;
            for (ToldEvent event : events) {
                long number = numbering.nextEvent();
                long sum = FrameRows.sum(captureId, ordinal, event, number);
                Rows.bind(insert, captureId, ordinal++, event.version(), event.kind(), event.line(), number, sum);
                insert.executeUpdate();
                numbering.tookEvent();
            }
        }
    }

    private long insert(
            Connection connection, CaptureKind kind, CaptureStart start, Long profile, String header, String truth)
            throws SQLException {
        Rows.run(
                connection,
                "INSERT INTO capture (uuid, kind, boot_id, started_wall_ms, started_mono_ns, zone, cube, solver, hand,"
                        + " profile_id, origin, header, truth, is_dated)"
                        + " VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
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
                truth,
                start.isDated() ? 1 : 0);
        long id = Rows.only(connection, "SELECT last_insert_rowid()", row -> row.getLong(1));
        Numbering numbering = writer.get().numbering();
        Rows.run(
                connection,
                "UPDATE capture SET frames_before = ?, sum = ? WHERE id = ?",
                numbering.nextFrame() - 1,
                StoredCapture.sum(id, kind, start, header, truth),
                id);
        numbering.tookCapture(id);
        return id;
    }

    /** All captures that can be read, in the order in which they were begun. */
    public List<CaptureRow> all() {
        return read(StoredCapture.COLUMNS + "ORDER BY c.id");
    }

    /** One capture; empty also if it cannot be read. */
    public Optional<CaptureRow> find(long captureId) {
        return read(StoredCapture.COLUMNS + "WHERE c.id = ?", captureId).stream()
                .findFirst();
    }

    private List<CaptureRow> read(String sql, Object... values) {
        List<StoredCapture> stored = queries.read(connection -> Rows.all(connection, sql, StoredCapture::of, values));
        stored.stream()
                .filter(StoredCapture::isAltered)
                .forEach(altered -> notes.add(
                        altered.id(),
                        "capture " + altered.id() + " was altered on the disk"
                                + (altered.row().isPresent()
                                        ? ": its cube, solver or hand may be wrong"
                                        : " and is left out; its frames are kept")));
        return stored.stream().flatMap(found -> found.row().stream()).toList();
    }

    /**
     * How far a capture goes: its last frame, drop and told event. Differs whenever there is something new to derive
     * from; a step down three indexes.
     */
    public String extent(long captureId) {
        return queries.read(
                connection -> Rows.only(connection, "SELECT " + EXTENT, row -> row.getString(1), captureId));
    }

    /** Every frame of a capture that is as it arrived. */
    public List<RawFrame> frames(long captureId) {
        return heard(captureId).frames();
    }

    /**
     * What was heard.
     *
     * @param frames every frame that is as it arrived
     * @param holes of our own making and of the disk's, in order
     */
    public record Heard(List<RawFrame> frames, List<Drop> holes) {
        public Heard {
            frames = List.copyOf(frames);
            holes = List.copyOf(holes);
        }
    }

    /** Every frame of a capture that is as it arrived, and the holes between them; what is missing is noted. */
    public Heard heard(long captureId) {
        Acknowledged counted = FrameRows.count(count);
        FrameRows.Read read = queries.read(connection -> FrameRows.of(connection, captureId, counted));
        read.missing().forEach(this::note);
        List<Drop> holes = new ArrayList<>(drops(captureId));
        holes.addAll(read.holes());
        holes.sort(Comparator.comparing(Drop::atNanos));
        return new Heard(read.frames(), holes);
    }

    private void note(Missing missing) {
        missing.without(queries.read(MissingRows::noted)).forEach(notes::add);
    }

    /** The holes of our own making, in order. */
    public List<Drop> drops(long captureId) {
        return queries.read(connection -> Rows.all(
                connection,
                "SELECT at_ns, frames FROM dropped WHERE capture_id = ? ORDER BY connection, ordinal",
                row -> new Drop(row.getLong(1), row.getLong(2)),
                captureId));
    }

    /** What was told, in order, as far as it is as it was told; what is not is noted. */
    public List<ToldEvent> events(long captureId) {
        List<Optional<ToldEvent>> told = queries.read(connection -> Rows.all(
                connection,
                "SELECT kind, version, line, ordinal, number, sum FROM event WHERE capture_id = ? ORDER BY ordinal",
                row -> event(captureId, row),
                captureId));
        return told.stream().flatMap(Optional::stream).toList();
    }

    private Optional<ToldEvent> event(long captureId, ResultSet row) throws SQLException {
        ToldEvent event = new ToldEvent(row.getString(1), row.getInt(2), row.getString(3));
        long ordinal = row.getLong(4);
        long number = row.getLong(5);
        if (!row.wasNull() && FrameRows.sum(captureId, ordinal, event, number) != row.getLong(6)) {
            notes.add(new Missing(Missing.Kind.EVENT, number, number));
            return Optional.empty();
        }
        return Optional.of(event);
    }

    /** What a solver said of a hand, as its line of a turn stream. */
    public record Stated(long captureId, String solver, String line) {}

    /** Everything that solvers said of hands, in the order of the captures. */
    public List<Stated> stated() {
        return stated(Said.HAND);
    }

    /** The times that calibration drills taught of solvers, in the order of the captures. */
    public List<Stated> calibrations() {
        return stated(Said.CALIBRATION);
    }

    /** The sequences that solvers say they turn, in the order of the captures. */
    public List<Stated> sequences() {
        return stated(Said.SEQUENCES);
    }

    /** What is asked for by its kind, over all captures. */
    enum Said {
        HAND("hand"),
        CALIBRATION("calibration"),
        SEQUENCES("sequences");

        final String sql;

        Said(String kind) {
            // The kind stands in the text, for SQLite takes a partial index only where it can see that it fits.
            this.sql = "SELECT event.kind, version, line, ordinal, number, event.sum, capture_id, solver FROM event"
                    + " JOIN capture c ON c.id = capture_id WHERE event.kind = '" + kind
                    + "' ORDER BY capture_id, ordinal";
        }
    }

    private List<Stated> stated(Said kind) {
        List<Optional<Stated>> stated = queries.read(connection -> Rows.all(
                connection,
                kind.sql,
                row -> event(row.getLong(7), row).isPresent()
                        ? Optional.of(new Stated(row.getLong(7), row.getString(8), row.getString(3)))
                        : Optional.empty()));
        return stated.stream().flatMap(Optional::stream).toList();
    }
}
