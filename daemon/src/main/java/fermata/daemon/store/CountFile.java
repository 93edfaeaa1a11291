package fermata.daemon.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
import java.util.Optional;
import java.util.zip.CRC32C;

/**
 * A small file beside the database that counts what was acknowledged, so that a database that lost its end says so.
 *
 * <p>Two slots of a sector each are written in turn, in place: a write that a power cut tears leaves the other, and no
 * write asks the disk for room. Written after the commit that it counts and before that is acknowledged, so that it
 * never counts what may not be there. Owned by the writer's thread.
 */
final class CountFile implements AutoCloseable {
    private static final byte[] MARK = "fermata1".getBytes(StandardCharsets.US_ASCII);
    private static final int SLOT_BYTES = 512;
    private static final int SUMMED_BYTES = MARK.length + 4 * Long.BYTES;

    private final FileChannel channel;
    private long serial;

    private CountFile(FileChannel channel, long serial) {
        this.channel = channel;
        this.serial = serial;
    }

    private record Slot(long serial, Acknowledged count) {}

    /**
     * What a file says.
     *
     * @param count the newest count; empty if there is none that can be read
     * @param isDamaged whether there is a file that cannot be read
     */
    record Reading(Optional<Acknowledged> count, boolean isDamaged) {}

    /** Reads the count; a file that is not there counts nothing. */
    static Reading read(Path file) {
        try {
            Optional<Acknowledged> count = newest(Files.readAllBytes(file)).map(Slot::count);
            return new Reading(count, count.isEmpty());
        } catch (IOException e) {
            return new Reading(Optional.empty(), Files.exists(file));
        }
    }

    /** Opens the file to count on from what it says; makes it where it is missing. */
    static CountFile open(Path file) throws IOException {
        FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
        boolean usable = false;
        try {
            ByteBuffer bytes = ByteBuffer.allocate(2 * SLOT_BYTES);
            while (bytes.hasRemaining() && channel.read(bytes) > 0) {
                // Reads on.
            }
            Optional<Slot> newest = newest(Arrays.copyOf(bytes.array(), bytes.position()));
            if (bytes.hasRemaining()) {
                channel.write(ByteBuffer.allocate(2 * SLOT_BYTES), 0);
                channel.force(true);
                WholeFile.forceDirectory(file);
            }
            usable = true;
            return new CountFile(channel, newest.map(Slot::serial).orElse(0L));
        } finally {
            if (!usable) {
                channel.close();
            }
        }
    }

    private static Optional<Slot> newest(byte[] bytes) {
        Optional<Slot> newest = Optional.empty();
        for (int at = 0; at + SLOT_BYTES <= bytes.length; at += SLOT_BYTES) {
            Optional<Slot> slot = slot(ByteBuffer.wrap(bytes, at, SLOT_BYTES).slice());
            if (slot.isPresent()
                    && newest.map(Slot::serial).orElse(0L) < slot.get().serial()) {
                newest = slot;
            }
        }
        return newest;
    }

    private static Optional<Slot> slot(ByteBuffer slot) {
        CRC32C crc = new CRC32C();
        crc.update(slot.slice(0, SUMMED_BYTES));
        byte[] mark = new byte[MARK.length];
        slot.get(mark);
        long serial = slot.getLong();
        long frames = slot.getLong();
        long events = slot.getLong();
        long captures = slot.getLong();
        boolean isWhole = Arrays.equals(mark, MARK) && slot.getInt() == (int) crc.getValue();
        return isWhole && serial > 0 && frames >= 0 && events >= 0 && captures >= 0
                ? Optional.of(new Slot(serial, new Acknowledged(frames, events, captures)))
                : Optional.empty();
    }

    /** Waits until the count is on the disk. */
    void write(Acknowledged count) throws IOException {
        ByteBuffer slot = ByteBuffer.allocate(SLOT_BYTES);
        slot.put(MARK)
                .putLong(serial + 1)
                .putLong(count.frames())
                .putLong(count.events())
                .putLong(count.captures());
        CRC32C crc = new CRC32C();
        crc.update(slot.slice(0, SUMMED_BYTES));
        slot.putInt((int) crc.getValue());
        slot.rewind();
        channel.write(slot, (serial + 1) % 2 * SLOT_BYTES);
        // Its length does not change, so that the data alone is enough.
        channel.force(false);
        serial++;
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
