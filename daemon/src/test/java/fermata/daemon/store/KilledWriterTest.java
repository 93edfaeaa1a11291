package fermata.daemon.store;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.stream.RawFrame;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Kills a process in the middle of its commits, again and again, and asks whether it kept its word. */
class KilledWriterTest {
    private static final int KILLS = 5;

    @TempDir
    Path directory;

    @Test
    void shouldLoseNothingAcknowledgedWhenTheWriterIsKilled() throws Exception {
        Random chance = new Random(11);
        long acknowledged = -1;
        for (int kill = 0; kill < KILLS; kill++) {
            long killAfter = acknowledged + 20 + chance.nextInt(150);
            acknowledged = runAndKill(killAfter);

            assertThat(acknowledged).as("kill %d", kill).isGreaterThanOrEqualTo(killAfter);
            assertThat(stored()).as("kill %d", kill).isGreaterThan(acknowledged);
        }
        assertThat(unpackedLibraries()).isEqualTo(1);
    }

    /** Runs a writer until it has acknowledged a frame, kills it, and gives the last one it acknowledged. */
    private long runAndKill(long killAfter) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx64m",
                        "-XX:+UseSerialGC",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Writer.class.getName(),
                        directory.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        long last = -1;
        try (BufferedReader said = process.inputReader()) {
            String line = said.readLine();
            while (line != null) {
                last = Long.parseLong(line);
                if (last >= killAfter) {
                    // Process.destroyForcibly would close the pipe and with it what was said last.
                    process.toHandle().destroyForcibly();
                }
                line = said.readLine();
            }
        } finally {
            process.destroyForcibly();
        }
        assertThat(process.waitFor(60, TimeUnit.SECONDS)).isTrue();
        return last;
    }

    /** How many frames there are, after a check that they are whole and in order. */
    private long stored() {
        try (Store store = StoreSamples.open(new Home(directory))) {
            assertThat(store.setAside()).isEmpty();
            List<RawFrame> frames = store.captures().frames(1);
            for (int ordinal = 0; ordinal < frames.size(); ordinal++) {
                assertThat(frames.get(ordinal).bytes())
                        .isEqualTo(StoreSamples.frame(1, ordinal).bytes());
            }
            return frames.size();
        }
    }

    private long unpackedLibraries() throws IOException {
        try (Stream<Path> files = Files.walk(directory.resolve("native"))) {
            return files.filter(Files::isRegularFile).count();
        }
    }

    /** Appends frames to capture 1, one a commit, first repeating some that are there; says each one that is safe. */
    static final class Writer {
        private Writer() {}

        public static void main(String[] args) {
            Store store = StoreSamples.open(new Home(Path.of(args[0])));
            if (store.captures().all().isEmpty()) {
                store.captures().begin(StoreSamples.start(), "{}", "");
            }
            CaptureJournal journal = store.captures().resume(1);
            long next = Math.max(0, store.captures().frames(1).size() - 5);
            while (true) {
                journal.append(List.of(StoreSamples.frame(1, next)));
                System.out.println(next);
                next++;
            }
        }
    }
}
