package fermata.daemon.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Set;

/**
 * Copies a practice while it is written. The copy is one moment of it and a database of its own: to restore it, put it
 * into an empty home as {@code practice.db}. Only SQLite may open a database that is in use, so the copy is SQLite's
 * (VACUUM INTO), and it has its name only once it is whole and on the disk. Stateless.
 */
public final class Backup {
    private static final Set<PosixFilePermission> OWNER_ONLY = PosixFilePermissions.fromString("rw-------");

    private Backup() {}

    /**
     * Writes the copy; costs about as long as reading the database takes.
     *
     * @param file must not be there yet; readable by its owner only, where the file system knows of owners
     * @return how many bytes it has
     * @throws StoreException if there is no practice, or the file is there or cannot be written
     */
    public static long write(Home home, Path file) {
        Path unfinished = Path.of(file + ".unfinished");
        if (Files.exists(file)) {
            throw new StoreException(
                    StoreFault.READ_ONLY, file + " is there already; name another, or remove it first");
        }
        try (Connection connection = Database.openForReading(home)) {
            Files.deleteIfExists(unfinished);
            // Made first, as SQLite takes an empty file: nobody else reads it meanwhile, and a stick without
            // permissions (FAT) lets one ask for them, but not change them.
            Files.createFile(unfinished, PosixFilePermissions.asFileAttribute(OWNER_ONLY));
            Rows.run(connection, "VACUUM INTO ?", unfinished.toString());
            WholeFile.force(unfinished);
            Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE);
            return Files.size(file);
        } catch (SQLException e) {
            WholeFile.discard(unfinished, e);
            throw SqliteFaults.ofCopying(home.database(), file, e);
        } catch (IOException e) {
            WholeFile.discard(unfinished, e);
            throw new StoreException(
                    StoreFault.READ_ONLY,
                    "cannot write a backup of " + home.database() + " to " + file + ": " + FileFaults.reason(e),
                    e);
        }
    }
}
