package fermata.daemon.store;

import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.DroppedFrames;
import fermata.daemon.capture.FrameJournal;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.capture.JournalException;
import fermata.daemon.capture.JournalOutage;
import fermata.daemon.capture.LinkChange;
import fermata.daemon.capture.LinkEvent;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The durable end of a capture. When {@link #append} returns, the items survive a power cut; items that are there
 * already are skipped.
 *
 * <p>Called by one thread; the work itself is done by the store's writer.
 */
public final class CaptureJournal implements FrameJournal {
    private static final String INSERT_CONNECTION =
            "INSERT OR IGNORE INTO connection (capture_id, number, first_ns) VALUES (?, ?, ?)";
    private static final String INSERT_FRAME =
            "INSERT OR IGNORE INTO frame (capture_id, connection, ordinal, arrival_ns, characteristic_id, bytes,"
                    + " number, sum) VALUES (?, ?, ?, ?, ?, ?, ?, ?)";
    private static final String INSERT_LINK =
            "INSERT OR IGNORE INTO link_event (capture_id, connection, ordinal, at_ns, kind, detail)"
                    + " VALUES (?, ?, ?, ?, ?, ?)";
    private static final String INSERT_DROPPED =
            "INSERT OR IGNORE INTO dropped (capture_id, connection, ordinal, at_ns, frames) VALUES (?, ?, ?, ?, ?)";

    private final WriterThread writer;
    private final long captureId;

    CaptureJournal(WriterThread writer, long captureId) {
        this.writer = writer;
        this.captureId = captureId;
    }

    /** The capture's number in the store. */
    public long captureId() {
        return captureId;
    }

    @Override
    public void append(List<CapturedItem> items) {
        write("record what the cube said", connection -> {
            insert(connection, items);
            return null;
        });
    }

    @Override
    public void mended(JournalOutage outage) {
        write("note that nothing could be kept for a while", connection -> {
            Rows.run(
                    connection,
                    "INSERT OR REPLACE INTO outage (capture_id, from_ns, lasted_ns, fault, dropped)"
                            + " VALUES (?, ?, ?, ?, ?)",
                    captureId,
                    outage.sinceNanos(),
                    outage.lasted().toNanos(),
                    outage.fault().name(),
                    outage.framesDropped());
            return null;
        });
    }

    @Override
    public void rested() {
        try {
            writer.fold();
        } catch (StoreException e) {
            throw new JournalException(e.fault().forJournal(), e.getMessage(), e);
        }
    }

    private void write(String doing, WriterThread.Work<Void> work) {
        try {
            writer.write(doing, work);
        } catch (StoreException e) {
            throw new JournalException(e.fault().forJournal(), e.getMessage(), e);
        }
    }

    private void insert(Connection connection, List<CapturedItem> items) throws SQLException {
        try (PreparedStatement connections = connection.prepareStatement(INSERT_CONNECTION);
                PreparedStatement frames = connection.prepareStatement(INSERT_FRAME);
                PreparedStatement links = connection.prepareStatement(INSERT_LINK);
                PreparedStatement drops = connection.prepareStatement(INSERT_DROPPED)) {
            ItemRows rows = new ItemRows(connection, frames, links, drops);
            long lastConnection = -1;
            for (CapturedItem item : items) {
                if (item.connection() != lastConnection) {
                    run(connections, captureId, item.connection(), item.atNanos());
                    lastConnection = item.connection();
                }
                item.visit(rows);
            }
        }
    }

    private void insert(PreparedStatement frames, HeardFrame frame, long characteristic) throws SQLException {
        Numbering numbering = writer.numbering();
        long number = numbering.nextFrame();
        byte[] bytes = frame.bytes();
        long sum = FrameRows.sum(
                captureId,
                frame.connection(),
                frame.ordinal(),
                frame.arrivalNanos(),
                frame.characteristicUuid(),
                bytes,
                number);
        Rows.bind(
                frames,
                captureId,
                frame.connection(),
                frame.ordinal(),
                frame.arrivalNanos(),
                characteristic,
                bytes,
                number,
                sum);
        if (frames.executeUpdate() == 1) {
            numbering.tookFrame();
        }
    }

    /** Puts each item where its kind is kept. */
    private final class ItemRows implements CapturedItem.Visitor<SQLException> {
        private final Connection connection;
        private final PreparedStatement frames;
        private final PreparedStatement links;
        private final PreparedStatement drops;
        // Numbers of characteristics are looked up anew for each group: one that was rolled back must not be
        // remembered.
        private final Map<String, Long> characteristics = new HashMap<>();

        ItemRows(Connection connection, PreparedStatement frames, PreparedStatement links, PreparedStatement drops) {
            this.connection = connection;
            this.frames = frames;
            this.links = links;
            this.drops = drops;
        }

        @Override
        public void frame(HeardFrame frame) throws SQLException {
            long characteristic = characteristic(connection, characteristics, frame.characteristicUuid());
            insert(frames, frame, characteristic);
        }

        @Override
        public void link(LinkEvent link) throws SQLException {
            LinkChange change = link.change();
            run(links, captureId, link.connection(), link.ordinal(), link.atNanos(), change.kind(), change.detail());
        }

        @Override
        public void dropped(DroppedFrames drop) throws SQLException {
            run(drops, captureId, drop.connection(), drop.ordinal(), drop.atNanos(), drop.frames());
        }
    }

    private static long characteristic(Connection connection, Map<String, Long> known, String uuid)
            throws SQLException {
        Long number = known.get(uuid);
        if (number == null) {
            try (PreparedStatement insert =
                    connection.prepareStatement("INSERT OR IGNORE INTO characteristic (uuid) VALUES (?)")) {
                run(insert, uuid);
            }
            number = Rows.only(connection, "SELECT id FROM characteristic WHERE uuid = ?", row -> row.getLong(1), uuid);
            known.put(uuid, number);
        }
        return number;
    }

    private static void run(PreparedStatement statement, Object... values) throws SQLException {
        Rows.bind(statement, values);
        statement.executeUpdate();
    }
}
