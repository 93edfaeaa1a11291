package fermata.daemon.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;

/** Says why a file could not be used; Java's own messages are often no more than its name. Stateless. */
final class Reasons {
    private Reasons() {}

    static String of(IOException failure) {
        if (failure instanceof NoSuchFileException) {
            return "there is no such file";
        }
        if (failure instanceof AccessDeniedException) {
            return "its permissions do not allow it";
        }
        if (failure instanceof FileAlreadyExistsException) {
            return "it is there already";
        }
        return failure.getMessage();
    }
}
