package fermata.daemon.store;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** Says why a file could not be used; Java's own messages are often no more than its name. Stateless. */
public final class FileFaults {
    private FileFaults() {}

    /** The reason in words, to follow what could not be done with which file. */
    public static String reason(IOException failure) {
        if (failure instanceof NoSuchFileException missing) {
            return missing(missing.getFile());
        }
        if (failure instanceof AccessDeniedException) {
            return "its permissions do not allow it";
        }
        if (failure instanceof FileAlreadyExistsException) {
            return "it is there already";
        }
        if (failure instanceof CharacterCodingException) {
            return "it is not UTF-8 text";
        }
        // Its message would name the file once more.
        boolean isSaid = failure instanceof FileSystemException said && said.getReason() != null;
        return isSaid ? ((FileSystemException) failure).getReason() : failure.getMessage();
    }

    /** Whoever writes a new file misses its directory. */
    private static String missing(String file) {
        Path directory = Path.of(file).toAbsolutePath().getParent();
        return directory == null || Files.isDirectory(directory)
                ? "there is no such file"
                : "there is no directory " + directory;
    }
}
