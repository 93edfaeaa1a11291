package fermata.daemon.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.util.LibraryLoaderUtil;

/**
 * Unpacks SQLite's library once into the home.
 *
 * <p>Left alone, the driver unpacks 1.1 MB into the temporary directory at each start and leaves it there when the
 * process is killed; a temporary directory may also forbid running code.
 */
final class NativeLibrary {
    private static final String PATH_PROPERTY = "org.sqlite.lib.path";

    private NativeLibrary() {}

    /** Points the driver at the unpacked library; keeps to the driver's own way where the home cannot be written. */
    static synchronized void prepare(Home home) {
        if (System.getProperty(PATH_PROPERTY) != null) {
            return;
        }
        String name = LibraryLoaderUtil.getNativeLibName();
        String resource = LibraryLoaderUtil.getNativeLibResourcePath() + "/" + name;
        Path directory = home.nativeDirectory().resolve(SQLiteJDBCLoader.getVersion());
        try (InputStream packed = SQLiteJDBCLoader.class.getResourceAsStream(resource)) {
            if (packed == null) {
                return;
            }
            Path library = directory.resolve(name);
            byte[] bytes = packed.readAllBytes();
            if (!Files.isRegularFile(library) || Files.size(library) != bytes.length) {
                put(bytes, library);
            }
            System.setProperty(PATH_PROPERTY, directory.toString());
        } catch (IOException homeCannotBeWritten) {
            // The driver then unpacks into the temporary directory as it does by itself.
            System.clearProperty(PATH_PROPERTY);
        }
    }

    private static void put(byte[] bytes, Path library) throws IOException {
        Files.createDirectories(library.getParent());
        Path fresh = Files.createTempFile(library.getParent(), "library", ".new");
        try {
            Files.write(fresh, bytes);
            Files.move(fresh, library, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(fresh);
        }
    }
}
