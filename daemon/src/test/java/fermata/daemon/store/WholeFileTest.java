package fermata.daemon.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    @TempDir
    private Path directory;

    @Test
    void shouldTakeThePlaceOfTheFileOfThatName() throws IOException {
        Path file = directory.resolve("page.html");

        WholeFile.write(file, "first", "rw-------");
        WholeFile.write(file, "second", "rw-------");

        assertThat(file).hasContent("second");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        assertThat(directory).isDirectoryNotContaining(other -> !other.equals(file));
    }

    @Test
    void shouldLeaveNothingBehindWhereItCannotWrite() throws IOException {
        Path taken = Files.createDirectory(directory.resolve("page.html"));
        Files.writeString(taken.resolve("somebody's"), "");

        assertThatThrownBy(() -> WholeFile.write(taken, "text", "rw-------")).isInstanceOf(IOException.class);
        assertThatThrownBy(() -> WholeFile.write(directory.resolve("none/page.html"), "text", "rw-------"))
                .isInstanceOf(NoSuchFileException.class);

        assertThat(directory).isDirectoryNotContaining(other -> !other.equals(taken));
    }
}
