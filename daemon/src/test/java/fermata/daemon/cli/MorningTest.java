package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.demo.Rehearsal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The rig's clock stands at 23:00 on 24 November 2026 in Oslo. */
class MorningTest {
    @TempDir
    static Path shared;

    private static List<String> evening;

    @TempDir
    Path directory;

    @BeforeAll
    static void rehearse() {
        evening = Rehearsal.evening(3, 5).lines();
    }

    @Test
    void shouldWriteUpEveryDayThatEndedOnceAndNotTheOneThatStillRuns() throws IOException {
        Path home = directory.resolve("home");
        CommandRig rig = new CommandRig(home);
        bringIn(rig, "2026-11-21T20:00:00Z");
        bringIn(rig, "2026-11-23T20:00:00Z");
        bringIn(rig, "2026-11-24T20:00:00Z");

        Outcome first = rig.run("morning");
        Outcome second = rig.run("morning");

        assertThat(first.code()).isZero();
        assertThat(files(home.resolve("nights")))
                .containsExactly("2026-11-21.html", "2026-11-21.txt", "2026-11-23.html", "2026-11-23.txt");
        assertThat(first.lines()).hasSize(2);
        assertThat(Files.readString(home.resolve("nights/2026-11-23.txt"))).contains("3 solves");
        assertThat(Files.readString(home.resolve("nights/2026-11-23.html"))).contains("2026-11-23", "pair4");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(home.resolve("nights"))))
                .isEqualTo("rwx------");
        assertThat(second).isEqualTo(new Outcome(0, "", ""));
    }

    @Test
    void shouldSayNothingWhenThereWasNoPractice() {
        Path home = directory.resolve("never");

        assertThat(new CommandRig(home).run("morning")).isEqualTo(new Outcome(0, "", ""));
        assertThat(home).doesNotExist();
    }

    @Test
    void shouldWriteANightsPageThatNamesNobodyAndAsksForNothing() throws IOException {
        CommandRig rig = new CommandRig(directory.resolve("home"));
        bringIn(rig, "2026-11-23T20:00:00Z");
        Path page = directory.resolve("night.html");

        assertThat(rig.run("night", "--out", page.toString()).code()).isZero();

        assertThat(Files.readString(page))
                .contains("2026-11-23")
                .doesNotContain("\"cube\"", "\"solver\"")
                .doesNotContainPattern("(src|href)=\"(https?:)?/");
        assertThat(rig.run("night", "--out", page.toString()))
                .satisfies(again -> assertThat(again.code()).isEqualTo(2))
                .satisfies(again -> assertThat(again.err()).contains("night.html"));
    }

    /** The answers are derived, so that nobody would read what the disk altered. */
    @Test
    void shouldNameWhatTheDiskAlteredSinceItWasRead() throws Exception {
        CommandRig rig = new CommandRig(directory.resolve("home"));
        bringIn(rig, "2026-11-23T20:00:00Z");
        assertThat(rig.run("morning").err()).doesNotContain("warning");
        String url = "jdbc:sqlite:" + directory.resolve("home").resolve("practice.db");
        try (Connection connection = DriverManager.getConnection(url);
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("DROP TRIGGER event_is_append_only");
            statement.executeUpdate("UPDATE event SET line = line || ' ' WHERE number = 7");
            statement.executeUpdate("CREATE TRIGGER event_is_append_only BEFORE UPDATE ON event\n"
                    + "BEGIN SELECT RAISE(ABORT, 'events are appended, never altered'); END");
        }

        Outcome outcome = rig.run("morning");

        assertThat(outcome.code()).isZero();
        assertThat(outcome.err()).contains("warning: 1 told event (7) was acknowledged and cannot be read");
    }

    @Test
    void shouldWriteUnitsThatRunByTheClockOnTheWallAndCatchUp() throws IOException {
        Path units = directory.resolve("units");

        Outcome outcome = CommandRig.runPlain(
                "", "timer", "--program", "/bin/true", "--home", "/srv/the cook's 5% $", "--out", units.toString());

        assertThat(outcome.code()).isZero();
        assertThat(Files.readString(units.resolve("fermata-morning.service")))
                .contains("ExecStart=/bin/true morning --home \"/srv/the cook's 5%% $$\"\n");
        assertThat(Files.readString(units.resolve("fermata-morning.timer")))
                .contains("OnCalendar=*-*-* 04:05:00\n", "Persistent=true\n");
        assertThat(CommandRig.runPlain("", "timer", "--program", "fermata").err())
                .contains("--program fermata");
    }

    @Test
    void shouldWriteUnitsThatSystemdAccepts() throws IOException, InterruptedException {
        Systemd.needed();
        CommandRig.runPlain("", "timer", "--program", "/bin/true", "--out", directory.toString());

        assertThat(Systemd.analyze(
                        "verify", directory.resolve("fermata-morning.timer").toString()))
                .isEmpty();
    }

    @Test
    void shouldGoOffAfterTheDayHasEndedWhenTheClocksChange() throws IOException, InterruptedException {
        Systemd.needed();
        Systemd.zoneNeeded("Europe/Oslo");

        // In Oslo the clocks go forward on 29 March 2026 and back on 25 October 2026, between 02:00 and 03:00.
        assertThat(Systemd.analyze("calendar", "--base-time=2026-03-28 12:00:00 UTC", "*-*-* 04:05:00 Europe/Oslo"))
                .contains("Next elapse: Sun 2026-03-29 02:05:00 UTC");
        assertThat(Systemd.analyze("calendar", "--base-time=2026-10-24 12:00:00 UTC", "*-*-* 04:05:00 Europe/Oslo"))
                .contains("Next elapse: Sun 2026-10-25 03:05:00 UTC");
    }

    private static void bringIn(CommandRig rig, String startedAt) throws IOException {
        List<String> lines = new ArrayList<>(evening);
        lines.set(
                0,
                lines.get(0)
                        .replace("\"hand\"", "\"started_at\":\"" + startedAt + "\",\"zone\":\"Europe/Oslo\",\"hand\""));
        Path file = shared.resolve(startedAt.substring(0, 10) + ".jsonl");
        Files.write(file, lines);
        Outcome imported = rig.run("import", file.toString());
        assertThat(imported.code()).as(imported.err()).isZero();
    }

    private static List<String> files(Path folder) throws IOException {
        try (var listed = Files.list(folder)) {
            return listed.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
