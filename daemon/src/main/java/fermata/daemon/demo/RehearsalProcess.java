package fermata.daemon.demo;

import fermata.daemon.stream.PracticeFile;
import fermata.daemon.stream.TurnStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Has an evening made by a process of its own, which takes its tables with it when it ends. Stateless. */
final class RehearsalProcess {
    private RehearsalProcess() {}

    /** Makes the evening, writes it to {@code file} and reads it back. Takes some seconds. */
    static TurnStream run(int solves, long seed, Path file) {
        List<String> command = List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                "fermata.daemon.cli.Main",
                "rehearse",
                "--solves=" + solves,
                "--seed=" + seed,
                file.toString());
        try {
            Process process =
                    new ProcessBuilder(command).redirectErrorStream(true).start();
            String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            int code = process.waitFor();
            if (code != 0) {
                throw new IllegalStateException(
                        "the process that makes the evening ended with code " + code + ": " + said.strip());
            }
            return PracticeFile.read(file.toString(), Files.readAllBytes(file)).get(0);
        } catch (IOException e) {
            throw new UncheckedIOException("the evening could not be made in " + file + ": " + e.getMessage(), e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while the evening was made", e);
        }
    }
}
