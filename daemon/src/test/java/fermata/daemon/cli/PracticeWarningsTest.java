package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.demo.Rehearsal;
import fermata.daemon.listening.BackgroundRenewal;
import fermata.daemon.live.LiveBoard;
import fermata.daemon.practice.Practice;
import fermata.daemon.practice.RenewalListener;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.web.Audience;
import fermata.daemon.web.PageServer;
import java.io.BufferedReader;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.LocalDateTime;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What is not well with the practice, as the pages that are open get to know it. */
@Timeout(120)
class PracticeWarningsTest {
    @TempDir
    Path directory;

    private final StringWriter said = new StringWriter();
    private Home home;

    @BeforeEach
    void setUp() throws Exception {
        home = new Home(directory.resolve("home"));
        CommandRig rig = new CommandRig(home.directory());
        String evening = String.join("\n", Rehearsal.evening(1, 9).lines());
        assertThat(rig.runPiped(evening, "import", "-").code()).isZero();
        assertThat(rig.run("solves").code()).isZero();
    }

    @Test
    void shouldTellThePageOfAFileThatWasSetAside() throws Exception {
        try (RandomAccessFile file = new RandomAccessFile(home.database().toFile(), "rw")) {
            file.seek(16);
            file.write(0x33);
        }
        try (Store store = open()) {
            Practice practice = new Practice(store);

            assertThat(page(practice, new PracticeWarnings(store, new PrintWriter(said))))
                    .contains(store.setAside().orElseThrow() + " was set aside because it is damaged")
                    .contains("fermata recover brings back what can still be read");
        }
    }

    @Test
    void shouldTellTerminalAndPageWhatTheDiskAlteredOnceItIsChecked() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + home.database());
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("DROP TRIGGER event_is_append_only");
            statement.executeUpdate("UPDATE event SET line = line || ' ' WHERE number = 7");
            statement.executeUpdate("CREATE TRIGGER event_is_append_only BEFORE UPDATE ON event\n"
                    + "BEGIN SELECT RAISE(ABORT, 'events are appended, never altered'); END");
        }
        try (Store store = open()) {
            PrintWriter err = new PrintWriter(said);
            PracticeWarnings warnings = new PracticeWarnings(store, err);
            assertThat(warnings.now()).isEmpty();
            BackgroundRenewal background = new BackgroundRenewal(RenewalListener.SILENT, err);
            Practice practice = new Practice(store, background);
            background.start(practice::refresh, () -> warnings.check(practice, background));
            while (warnings.now().isEmpty()) {
                Thread.onSpinWait();
            }
            background.close();

            String sentence = "1 told event (7) was acknowledged and cannot be read";
            assertThat(said.toString()).containsOnlyOnce("warning: " + sentence);
            assertThat(page(practice, warnings)).contains(sentence);
        }
    }

    private Store open() {
        return Store.openForWriting(home, () -> LocalDateTime.of(2026, 11, 25, 20, 0));
    }

    /** The first that an open page is told of the practice. */
    private static String page(Practice practice, PracticeWarnings warnings) throws Exception {
        try (LiveBoard board = LiveBoard.start(Optional::empty, MonotonicClock.system());
                PageServer server = PageServer.start(practice, board, Audience.thisMachine(), 0)) {
            board.warn(warnings::now);
            HttpRequest request = HttpRequest.newBuilder(URI.create(server.url() + "/api/live"))
                    .build();
            var answer = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofInputStream());
            try (BufferedReader lines =
                    new BufferedReader(new InputStreamReader(answer.body(), StandardCharsets.UTF_8))) {
                String line = lines.readLine();
                while (!line.contains("\"warnings\":[\"")) {
                    line = lines.readLine();
                }
                return line;
            }
        }
    }
}
