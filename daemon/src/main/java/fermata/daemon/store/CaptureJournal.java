package fermata.daemon.store;

import fermata.daemon.capture.CapturedItem;
import fermata.daemon.capture.DroppedFrames;
import fermata.daemon.capture.FrameJournal;
import fermata.daemon.capture.HeardFrame;
import fermata.daemon.capture.JournalException;
import fermata.daemon.capture.JournalOutage;
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
    private static final String INSERT_CONNECTION = "INSERT OR IGNORE INTO connection VALUES (?, ?, ?)";
    private static final String INSERT_FRAME = "INSERT OR IGNORE INTO frame VALUES (?, ?, ?, ?, ?, ?, ?, ?)";
    private static final String INSERT_LINK = "INSERT OR IGNORE INTO link_event VALUES (?, ?, ?, ?, ?, ?)";
    private static final String INSERT_DROPPED = "INSERT OR IGNORE INTO dropped VALUES (?, ?, ?, ?, ?)";

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
                    "INSERT OR REPLACE INTO outage VALUES (?, ?, ?, ?, ?)",
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
        // Numbers of characteristics are looked up anew for each group: one that was rolled back must not be
        // remembered.
        Map<String, Long> characteristics = new HashMap<>();
        try (PreparedStatement connections = connection.prepareStatement(INSERT_CONNECTION);
                PreparedStatement frames = connection.prepareStatement(INSERT_FRAME);
                PreparedStatement links = connection.prepareStatement(INSERT_LINK);
                PreparedStatement drops = connection.prepareStatement(INSERT_DROPPED)) {
            long lastConnection = -1;
            for (CapturedItem item : items) {
                if (item.connection() != lastConnection) {
                    run(connections, captureId, item.connection(), item.atNanos());
                    lastConnection = item.connection();
                }
                if (item instanceof HeardFrame frame) {
                    insert(frames, frame, characteristic(connection, characteristics, frame.characteristicUuid()));
                } else if (item instanceof LinkEvent link) {
                    run(
                            links,
                            captureId,
                            link.connection(),
                            link.ordinal(),
                            link.atNanos(),
                            link.change().kind(),
                            link.change().detail());
                } else if (item instanceof DroppedFrames drop) {
                    run(drops, captureId, drop.connection(), drop.ordinal(), drop.atNanos(), drop.frames());
                }
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
