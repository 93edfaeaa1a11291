package fermata.daemon.cli;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig.Outcome;
import fermata.daemon.time.MonotonicClock;
import fermata.daemon.virtualcube.BluezTemper;
import fermata.daemon.virtualcube.ScriptedTurn;
import fermata.daemon.virtualcube.VirtualCube;
import fermata.decoder.cube.Turn;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Runs {@code listen} as a process of its own against a virtual cube at real speed. */
class ListenTest {
    private static final int TURNS = 60;
    private static final long LIMIT_SECONDS = 60;
    private static final String ONE_TURN =
            "{\"format\":\"turn-stream\",\"version\":1,\"clock\":\"none\",\"hand\":\"left\"}\n{\"turn\":\"R\"}\n";

    @TempDir
    Path directory;

    @Test
    void shouldKeepEveryTurnAndEndInOrderWhenTerminated() throws Exception {
        Path home = directory.resolve("home");
        Path said = directory.resolve("said.txt");
        CommandRig rig = new CommandRig(home);
        try (VirtualCube cube = VirtualCube.start(
                VirtualCube.Setup.playing(script()),
                MonotonicClock.system(),
                new SplittableRandom(3),
                new BluezTemper())) {
            Process listen = listen(cube.busAddress(), home, said);
            try {
                cube.finished().get(LIMIT_SECONDS, TimeUnit.SECONDS);
                // Another process reads while this one listens.
                await(() -> turnsExported(rig) == TURNS);
                assertThat(rig.runPiped(ONE_TURN, "import", "-").err())
                        .contains("process " + listen.pid() + " is writing");
            } finally {
                listen.destroy();
            }
            assertThat(listen.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)).isTrue();
        }
        assertThat(said).content().contains("listening: galley cube").contains(" frames kept");
        Outcome export = rig.run("export", "--with-names");
        assertThat(export.out()).contains("\"hand\":\"right\"").contains("\"solver\":\"cook\"");
        assertThat(turnsExported(rig)).isEqualTo(TURNS);
    }

    @Test
    void shouldSayWhatIsWrongWithAProfileBeforeAnythingIsBegun() throws IOException {
        Path profile = Files.writeString(directory.resolve("profile.json"), "{\"format\":\"stream-profile\"}");

        Outcome outcome = new CommandRig(directory.resolve("home")).run("listen", "--profile", profile.toString());

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains(profile + " cannot be used: $.version");
        assertThat(directory.resolve("home")).doesNotExist();
    }

    private static long turnsExported(CommandRig rig) {
        return rig.run("export").lines().stream()
                .filter(line -> line.startsWith("{\"turn\""))
                .count();
    }

    @Test
    void shouldSayWhatAnAdapterIsNamedByWhenItIsNamedOtherwise() {
        Outcome outcome = new CommandRig(directory.resolve("home")).run("listen", "--adapter", "hci0", "--no-pages");

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains("--adapter hci0 is not a Bluetooth address such as 01:23:45:67:89:AB");
    }

    private Process listen(String bus, Path home, Path said) throws IOException {
        return new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx64m",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Main.class.getName(),
                        "listen",
                        "--bus=" + bus,
                        "--home=" + home,
                        "--no-pages",
                        "--hand=right",
                        "--solver=cook")
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
    }

    private static List<ScriptedTurn> script() {
        List<ScriptedTurn> script = new ArrayList<>();
        for (int i = 0; i < TURNS; i++) {
            script.add(new ScriptedTurn(50_000L * i, Turn.ofIndex(i * 7 % 18)));
        }
        return script;
    }

    private static void await(BooleanSupplier condition) throws InterruptedException {
        long deadline = System.nanoTime() + TimeUnit.SECONDS.toNanos(LIMIT_SECONDS);
        while (!condition.getAsBoolean()) {
            assertThat(System.nanoTime()).as("waited too long").isLessThan(deadline);
            TimeUnit.MILLISECONDS.sleep(100);
        }
    }
}
