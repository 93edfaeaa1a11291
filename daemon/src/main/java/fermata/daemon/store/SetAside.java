package fermata.daemon.store;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.TreeSet;

/**
 * Databases, or their logs, that failed their check and were put beside the practice; never deleted. What became of one
 * stands in its name: {@code practice.db.damaged-DATE}, later {@code .recovered-DATE} or {@code .dismissed-DATE}.
 * Stateless.
 */
public final class SetAside {
    private static final String DAMAGED = ".damaged-";
    private static final String RECOVERED = ".recovered-";
    private static final String DISMISSED = ".dismissed-";
    private static final String LOG = "-wal";
    private static final List<String> COMPANIONS = List.of(LOG, "-shm", "");

    private SetAside() {}

    /**
     * What was set aside and neither recovered nor dismissed, oldest first; of a log alone, the name without its end.
     */
    public static List<Path> waiting(Home home) {
        String prefix = home.database().getFileName() + DAMAGED;
        TreeSet<Path> found = new TreeSet<>();
        try (DirectoryStream<Path> files = Files.newDirectoryStream(home.directory(), prefix + "*")) {
            for (Path file : files) {
                String name = file.getFileName().toString().replaceFirst("-(wal|shm)$", "");
                found.add(home.directory().resolve(name));
            }
        } catch (IOException e) {
            // A home that cannot be listed is not there yet, and what needs it says so.
            return List.of();
        }
        return List.copyOf(found);
    }

    /** The log that belongs to a database. */
    static Path log(Path database) {
        return Path.of(database + LOG);
    }

    /** Puts the database aside with all that belongs to it: the log first, as a new database would delete it. */
    static Path move(Home home, String moment) {
        Path aside = Path.of(home.database() + DAMAGED + moment);
        try {
            for (String companion : COMPANIONS) {
                Path file = Path.of(home.database() + companion);
                if (Files.exists(file)) {
                    Files.move(file, Path.of(aside + companion));
                }
            }
            WholeFile.forceDirectory(aside);
            return aside;
        } catch (IOException e) {
            throw new StoreException(
                    StoreFault.READ_ONLY,
                    home.database() + " is damaged and cannot be set aside as " + aside + ": " + FileFaults.reason(e),
                    e);
        }
    }

    /**
     * Keeps a copy of a log that ends too early, before it is written to. Its locks are on other files, so that it may
     * be opened here.
     */
    static Path keepLog(Home home, String moment) {
        Path aside = Path.of(home.database() + DAMAGED + moment);
        try {
            Files.copy(home.log(), log(aside), StandardCopyOption.REPLACE_EXISTING);
            WholeFile.force(log(aside));
            WholeFile.forceDirectory(aside);
            return aside;
        } catch (IOException e) {
            throw new StoreException(
                    StoreFault.READ_ONLY,
                    home.log() + " is damaged and cannot be kept as " + log(aside) + ": " + FileFaults.reason(e),
                    e);
        }
    }

    /** Notes that all that can be read of it is in the practice. */
    static Path recovered(Path aside) {
        return rename(aside, RECOVERED);
    }

    /** Notes that nobody misses it. */
    static Path dismissed(Path aside) {
        return rename(aside, DISMISSED);
    }

    private static Path rename(Path aside, String word) {
        Path renamed = aside.resolveSibling(aside.getFileName().toString().replace(DAMAGED, word));
        try {
            for (String companion : COMPANIONS) {
                Path file = Path.of(aside + companion);
                if (Files.exists(file)) {
                    Files.move(file, Path.of(renamed + companion));
                }
            }
            return renamed;
        } catch (IOException e) {
            throw new StoreException(
                    StoreFault.READ_ONLY, "cannot rename " + aside + " to " + renamed + ": " + FileFaults.reason(e), e);
        }
    }
}
