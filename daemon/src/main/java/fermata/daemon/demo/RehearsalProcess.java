package fermata.daemon.demo;

import fermata.daemon.process.OwnProcess;
import fermata.daemon.turnfile.PracticeFile;
import fermata.daemon.turnfile.TurnStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Has an evening made by a process of its own, which takes its tables with it when it ends. Stateless. */
final class RehearsalProcess {
    private RehearsalProcess() {}

    /** Makes the evening, writes it to {@code file} and reads it back. Takes some seconds. */
    static TurnStream run(int solves, long seed, Path file) {
        OwnProcess.run(256, List.of("rehearse", "--solves=" + solves, "--seed=" + seed, file.toString()));
        try {
            return PracticeFile.read(file.toString(), Files.readAllBytes(file)).get(0);
        } catch (IOException e) {
            throw new UncheckedIOException("the evening could not be read from " + file + ": " + e.getMessage(), e);
        }
    }
}
