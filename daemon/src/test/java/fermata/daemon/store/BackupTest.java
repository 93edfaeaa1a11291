package fermata.daemon.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.stream.RawFrame;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupTest {
    @TempDir
    private Path directory;

    @Test
    void shouldBeAPracticeOfItsOwnWhenRestored() throws IOException {
        Home living = new Home(directory.resolve("living"));
        Path file = directory.resolve("it's a copy.db");
        try (Store store = StoreSamples.open(living)) {
            CaptureJournal journal = store.captures().begin(StoreSamples.start(), "{}", "");
            journal.append(StoreSamples.frames(1, 0, 500));

            long bytes = Backup.write(living, file);
            journal.append(StoreSamples.frames(1, 500, 600));

            assertThat(file).hasSize(bytes);
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                    .isEqualTo("rw-------");
        }
        Home restored = new Home(directory.resolve("restored"));
        Files.createDirectories(restored.directory());
        Files.copy(file, restored.database());

        try (Store store = StoreSamples.open(restored)) {
            assertThat(store.setAside()).isEmpty();
            assertThat(store.captures().frames(1)).hasSize(500);
            RawFrame last = store.captures().frames(1).get(499);
            assertThat(last.bytes()).isEqualTo(StoreSamples.frame(1, 499).bytes());
            // It is written as safely as any other.
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 1));
        }
    }

    @Test
    void shouldSayThatItIsThePracticeThatIsDamaged() throws IOException {
        Home home = new Home(directory.resolve("home"));
        try (Store store = StoreSamples.open(home)) {
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 20_000));
        }
        try (RandomAccessFile database = new RandomAccessFile(home.database().toFile(), "rw")) {
            // Frames; the first pages say which tables there are.
            long tenth = database.length() / 10;
            database.seek(9 * tenth);
            database.write(new byte[(int) tenth]);
        }

        assertThatThrownBy(() -> Backup.write(home, directory.resolve("copy.db")))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining(home.database() + " is damaged; keep the backups that you have")
                .hasMessageNotContaining("--home");
        assertThat(directory.resolve("copy.db.unfinished")).doesNotExist();
    }

    @Test
    void shouldNeverWriteOverAnythingNorLeaveHalfACopy() throws IOException {
        Home living = new Home(directory.resolve("living"));
        StoreSamples.open(living).close();
        Path there = Files.writeString(directory.resolve("there.db"), "somebody's");

        assertThatThrownBy(() -> Backup.write(living, there)).hasMessageContaining("is there already");
        assertThatThrownBy(() -> Backup.write(living, directory.resolve("nowhere/copy.db")))
                .isInstanceOf(StoreException.class)
                .hasMessageContaining("cannot write a backup of " + living.database())
                .hasMessageEndingWith("there is no directory " + directory.resolve("nowhere"));
        assertThatThrownBy(() -> Backup.write(new Home(directory.resolve("empty")), directory.resolve("copy.db")))
                .hasMessageContaining("there is no practice");

        assertThat(there).hasContent("somebody's");
        assertThat(directory.resolve("copy.db")).doesNotExist();
        assertThat(directory.resolve("copy.db.unfinished")).doesNotExist();
    }
}
