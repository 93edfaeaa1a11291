package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.demo.Rehearsal;
import fermata.daemon.store.Home;
import fermata.daemon.store.Store;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A damaged practice: left where it is by those who only read, set aside by listen, brought back by recover. */
class RecoverTest {
    private static final LocalDateTime NOW = LocalDateTime.of(2026, 11, 25, 20, 0);

    @TempDir
    Path directory;

    private Home home;
    private CommandRig rig;
    private String before;
    private long told;

    @BeforeEach
    void practise() {
        home = new Home(directory.resolve("home"));
        rig = new CommandRig(home.directory());
        List<String> lines = Rehearsal.evening(2, 9).lines();
        told = lines.size() - 1L;
        String evening = String.join("\n", lines);
        assertThat(rig.runPiped(evening, "import", "-").code()).isZero();
        before = rig.run("solves").out();
        assertThat(before.lines().count()).isGreaterThan(3);
    }

    /** Before, solves said 'No solves.' with 0 once something was not derived and nobody listened. */
    @ParameterizedTest
    @ValueSource(strings = {"solves", "night", "cases", "morning", "export", "sequences -"})
    void shouldLeaveADamagedPracticeWhereItIs(String command) throws IOException {
        damageHeader();

        Outcome outcome = rig.runPiped("", command.split(" "));

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains(home.database() + " is damaged and left as it is", "fermata recover");
        assertThat(outcome.err())
                .contains("0 frames and " + told + " told events of 1 captures in it are as they were");
        assertThat(outcome.out()).isEmpty();
        assertThat(home.database()).exists();
        assertThat(aside()).doesNotExist();
    }

    @Test
    void shouldNameWhatWasSetAsideUntilItIsRecovered() throws IOException {
        damageHeader();
        listen();

        Outcome named = rig.run("solves");
        assertThat(named.err()).contains("warning: " + aside() + " was set aside because it is damaged");
        assertThat(named.err()).contains("told events (1 to ");
        assertThat(named.out()).contains("No solves.");

        Outcome recovered = rig.run("recover", "--json");
        assertThat(recovered.code()).isZero();
        assertThat(recovered.json().at("/recovered/0/captures").intValue()).isEqualTo(1);
        assertThat(recovered.json().at("/missing")).isEmpty();
        assertThat(recovered.json().at("/recovered/0/file").stringValue()).contains("practice.db.recovered-");
        Outcome again = rig.run("solves");
        // The same solves under the same names.
        assertThat(again.out()).isEqualTo(before);
        assertThat(again.err()).doesNotContain("warning");
        assertThat(rig.run("recover").out()).contains("Nothing to recover");
    }

    @Test
    void shouldAddNothingWhenTheSameIsRecoveredAgain() throws IOException {
        damageHeader();
        assertThat(rig.run("recover").out()).contains("1 capture, 0 frames and ", " came back");

        Path recovered = home.directory().resolve("practice.db.recovered-20261124-230000");
        Outcome again = rig.run("recover", recovered.toString(), "--json");

        assertThat(DocumentedShapes.promised("recover")).containsAll(DocumentedShapes.found(again.json()));
        assertThat(again.json().at("/recovered/0/captures").intValue()).isZero();
        assertThat(again.json().at("/recovered/0/events").intValue()).isZero();
        assertThat(again.json().at("/recovered/0/already_there").intValue()).isPositive();
        assertThat(rig.run("solves").out()).isEqualTo(before);
    }

    @Test
    void shouldNameItNoMoreWhenItIsDismissed() throws IOException {
        damageHeader();
        listen();

        assertThat(rig.run("recover", "--dismiss").code()).isZero();

        assertThat(rig.run("solves").err()).doesNotContain("warning");
        assertThat(home.directory().resolve("practice.db.dismissed-20261125-200000"))
                .exists();
    }

    @Test
    void shouldRefuseToReadThePracticeItselfByteByByte() {
        Outcome outcome = rig.run("recover", home.database().toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains("is the practice itself");
    }

    @Test
    void shouldSayWhatIsMissingWhenACopyIsOlderThanThePractice() throws IOException {
        Path copy = directory.resolve("copy.db");
        assertThat(rig.run("backup", copy.toString()).code()).isZero();
        String later = String.join("\n", Rehearsal.evening(1, 10).lines());
        assertThat(rig.runPiped(later, "import", "-").code()).isZero();
        Files.move(copy, home.database(), StandardCopyOption.REPLACE_EXISTING);

        Outcome solves = rig.run("solves");

        assertThat(solves.code()).isZero();
        assertThat(solves.out()).isEqualTo(before);
        assertThat(solves.err()).contains("warning: ", "told events (", "acknowledged and cannot be read");
    }

    private void listen() {
        Store.openForWriting(home, () -> NOW).close();
    }

    private Path aside() {
        return home.directory().resolve("practice.db.damaged-20261125-200000");
    }

    /** The byte that says how long a page is. */
    private void damageHeader() throws IOException {
        try (RandomAccessFile file = new RandomAccessFile(home.database().toFile(), "rw")) {
            file.seek(16);
            file.write(0x33);
        }
    }
}
