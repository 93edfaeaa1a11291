package fermata.daemon.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFilePermissions;

/** Keeps other users of the machine out: somebody's practice is nobody else's business. */
final class OwnerOnly {
    private OwnerOnly() {}

    static void directory(Path directory) throws IOException {
        PosixFileAttributeView view = Files.getFileAttributeView(directory, PosixFileAttributeView.class);
        if (view != null) {
            view.setPermissions(PosixFilePermissions.fromString("rwx------"));
        }
    }
}
