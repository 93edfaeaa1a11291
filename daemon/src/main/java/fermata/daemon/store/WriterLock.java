package fermata.daemon.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;

/**
 * Says that this process is the one that writes to a home. The kernel drops it when the process dies, however it dies.
 *
 * <p>It is a file of its own because closing any handle of the database within this process would drop SQLite's own
 * locks (sqlite.org/howtocorrupt.html, section 2.2).
 */
final class WriterLock implements AutoCloseable {
    private final FileChannel channel;

    private WriterLock(FileChannel channel) {
        this.channel = channel;
    }

    /** Takes the lock, or nothing if somebody else has it. */
    static Optional<WriterLock> tryTake(Home home) {
        Path file = home.writerLock();
        try {
            FileChannel channel = FileChannel.open(
                    file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            FileLock lock = tryLock(channel);
            if (lock == null) {
                channel.close();
                return Optional.empty();
            }
            channel.truncate(0);
            channel.write(ByteBuffer.wrap((ProcessHandle.current().pid() + "\n").getBytes(StandardCharsets.US_ASCII)));
            return Optional.of(new WriterLock(channel));
        } catch (IOException e) {
            throw new StoreException(
                    StoreFault.READ_ONLY,
                    "cannot write " + file + ": " + FileFaults.reason(e) + "; check the permissions of "
                            + home.directory()
                            + ", its free space, and that its file system is not mounted read-only, or choose another"
                            + " --home",
                    e);
        }
    }

    private static FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException heldWithinThisProcess) {
            return null;
        }
    }

    /** Whoever holds the lock, in words. */
    static String holder(Home home) {
        try {
            String text = Files.readString(home.writerLock(), StandardCharsets.US_ASCII)
                    .strip();
            return text.matches("[0-9]{1,10}") ? "process " + text : "another process";
        } catch (IOException e) {
            return "another process";
        }
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw new StoreException(StoreFault.BROKEN, "cannot let go of the writer's lock: " + e.getMessage(), e);
        }
    }
}
