package fermata.daemon.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;

/**
 * The directory that holds everything of one practice board.
 *
 * @param directory an absolute path; need not exist yet
 */
public record Home(Path directory) {
    private static final String NAME = "fermata";

    public Home {
        Objects.requireNonNull(directory, "directory");
        directory = directory.toAbsolutePath().normalize();
    }

    /**
     * The usual home: {@code $XDG_DATA_HOME/fermata}, or {@code ~/.local/share/fermata}.
     *
     * @param environment the process's variables
     * @param userHome the user's home directory
     */
    public static Home usual(Map<String, String> environment, Path userHome) {
        // The XDG Base Directory Specification says to ignore a relative path.
        String data = environment.getOrDefault("XDG_DATA_HOME", "");
        Path base = data.startsWith("/")
                ? Path.of(data)
                : userHome.resolve(".local").resolve("share");
        return new Home(base.resolve(NAME));
    }

    /** The database. Only SQLite may open it. */
    public Path database() {
        return directory.resolve("practice.db");
    }

    /** Counts what was acknowledged. */
    Path count() {
        return directory.resolve("practice.count");
    }

    /** The write-ahead log of the database. Only SQLite may write it. */
    Path log() {
        return directory.resolve("practice.db-wal");
    }

    /** Where nights are written up. */
    public Path nights() {
        return directory.resolve("nights");
    }

    /** Held by the one process that writes; its text names that process. */
    Path writerLock() {
        return directory.resolve("writer.lock");
    }

    /** Where the unpacked SQLite library stays. */
    Path nativeDirectory() {
        return directory.resolve("native");
    }

    /** Makes a directory where it is missing, readable by nobody else. */
    public static void makeOwn(Path directory) throws IOException {
        if (!Files.isDirectory(directory)) {
            Files.createDirectories(directory);
            OwnerOnly.directory(directory);
        }
    }

    /** Makes the home. */
    void make() {
        try {
            makeOwn(directory);
        } catch (IOException e) {
            throw new StoreException(
                    StoreFault.READ_ONLY,
                    "cannot make the home directory " + directory
                            + "; choose another with --home or check the permissions of its parent",
                    e);
        }
    }
}
