package fermata.daemon.pairing;

import fermata.daemon.store.FileFaults;
import fermata.daemon.store.StoreException;
import fermata.daemon.store.StoreFault;
import fermata.daemon.store.WholeFile;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Small files of a home that two processes share: each is replaced as a whole, and changed by one process at a time.
 * For their owner's eyes only. What the file system refuses is a {@link StoreException}. Safe for use by many threads.
 */
final class PairingFiles {
    private final Path directory;

    PairingFiles(Path directory) {
        this.directory = directory;
    }

    Path path(String name) {
        return directory.resolve(name);
    }

    Optional<String> read(String name) {
        try {
            return Optional.of(Files.readString(path(name)));
        } catch (NoSuchFileException none) {
            return Optional.empty();
        } catch (IOException e) {
            throw failure("read", path(name), e);
        }
    }

    void write(String name, String text) {
        try {
            WholeFile.write(path(name), text, "rw-------");
        } catch (IOException e) {
            throw failure("write", path(name), e);
        }
    }

    void delete(String name) {
        try {
            Files.deleteIfExists(path(name));
        } catch (IOException e) {
            throw failure("delete", path(name), e);
        }
    }

    /** Reads, decides and writes with no other process or thread in between. */
    synchronized <T> T alone(Supplier<T> change) {
        try (FileChannel channel =
                FileChannel.open(path("paired.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            // Let go of with the channel.
            channel.lock();
            return change.get();
        } catch (IOException e) {
            throw failure("lock", path("paired.lock"), e);
        }
    }

    private static StoreException failure(String doing, Path file, IOException e) {
        return new StoreException(StoreFault.BROKEN, "cannot " + doing + " " + file + ": " + FileFaults.reason(e), e);
    }
}
