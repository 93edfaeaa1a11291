package fermata.daemon.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Opens homes that may be read and not written, as a user whom permissions bind. */
class ReadOnlyHomeTest {
    @TempDir
    Path directory;

    private Path home;

    @BeforeEach
    void setUp() throws IOException {
        home = directory.resolve("home");
        try (Store store = StoreSamples.open(new Home(home))) {
            store.captures().begin(StoreSamples.start(), "{}", "").append(StoreSamples.frames(1, 0, 7));
        }
        permit(directory, "rwxr-xr-x");
        permit(home, "r-xr-xr-x");
        permit(home.resolve("practice.db"), "r--r--r--");
        permit(home.resolve("writer.lock"), "r--r--r--");
    }

    @AfterEach
    void tearDown() throws IOException {
        permit(home, "rwxr-xr-x");
    }

    @Test
    void shouldReadAHomeThatMayNotBeWritten() throws Exception {
        assertThat(run("read")).isEqualTo("7 frames");
    }

    @Test
    void shouldSayWhereAndWhatToDoWhenAHomeMayNotBeWritten() throws Exception {
        assertThat(run("write"))
                .startsWith("READ_ONLY cannot write " + home.resolve("writer.lock"))
                .contains("permissions of " + home)
                .contains("--home");
    }

    @Test
    void shouldSayWhatToDoWhenAnOldHomeMayNotBeWritten() throws Exception {
        permit(home, "rwxr-xr-x");
        permit(home.resolve("practice.db"), "rw-r--r--");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + home.resolve("practice.db"));
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("DROP TABLE schema_number");
            statement.executeUpdate("PRAGMA user_version = 2");
        }
        permit(home.resolve("practice.db"), "r--r--r--");
        permit(home, "r-xr-xr-x");

        assertThat(run("read"))
                .startsWith("READ_ONLY " + home.resolve("practice.db") + " was written by an older fermata")
                .contains("where it can be written")
                .contains("writer.lock");
    }

    private static void permit(Path path, String permissions) throws IOException {
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(permissions));
    }

    private String run(String how) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>();
        if (isRoot()) {
            // Permissions bind root only without this right (capabilities(7)).
            command.addAll(List.of("setpriv", "--bounding-set=-dac_override"));
        }
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx64m",
                "-cp",
                System.getProperty("java.class.path"),
                Opener.class.getName(),
                how,
                home.toString()));
        // A newer JDK warns there of the native library; what the test is about is said on the standard output.
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return said.strip();
    }

    private static boolean isRoot() throws IOException {
        return (int) Files.getAttribute(Path.of("/proc/self"), "unix:uid") == 0;
    }

    /** Opens a home and says what came of it. */
    static final class Opener {
        private Opener() {}

        public static void main(String[] args) {
            Home home = new Home(Path.of(args[1]));
            try (Store store = args[0].equals("read") ? Store.openForReading(home) : StoreSamples.open(home)) {
                System.out.println(store.captures().frames(1).size() + " frames");
            } catch (StoreException e) {
                System.out.println(e.fault() + " " + e.getMessage());
            }
        }
    }
}
