package fermata.daemon.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

/**
 * Writes small files that are there as a whole or not at all, also after a power cut: a name alone may reach the disk
 * before what it names, so that is forced first (ext4(5), {@code auto_da_alloc}: a new name is not waited for).
 * Stateless.
 */
public final class WholeFile {
    private WholeFile() {}

    /**
     * Writes a file, in the place of the one of that name if there is one. Cost: that of one forced write.
     *
     * @param permissions of the file, {@code rw-------} or the like, where the file system knows of any
     * @throws IOException if it cannot be written; then nothing is left behind
     */
    public static void write(Path file, String text, String permissions) throws IOException {
        Path fresh = Files.createTempFile(
                file.toAbsolutePath().getParent(),
                file.getFileName().toString(),
                ".new",
                PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions)));
        try {
            Files.writeString(fresh, text);
            force(fresh);
            Files.move(fresh, file, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            discard(fresh, e);
            throw e;
        }
    }

    /** Waits until what was written is on the disk. */
    static void force(Path written) throws IOException {
        try (FileChannel channel = FileChannel.open(written, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** Waits until the name of a new file is on the disk too. */
    static void forceDirectory(Path file) throws IOException {
        try (FileChannel directory = FileChannel.open(file.toAbsolutePath().getParent(), StandardOpenOption.READ)) {
            directory.force(true);
        }
    }

    /** Deletes what was not finished. */
    static void discard(Path unfinished, Exception because) {
        try {
            Files.deleteIfExists(unfinished);
        } catch (IOException e) {
            because.addSuppressed(e);
        }
    }
}
