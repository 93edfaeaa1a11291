package fermata.daemon.cli;

import fermata.daemon.hold.HoldTrials;
import fermata.daemon.stream.WrittenSolve;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Reads a file of reconstructions that commands learn from or assess by. Stateless. */
final class WrittenFile {
    private static final String PIPED = "-";

    private WrittenFile() {}

    static HoldTrials read(Terminal terminal, String file) {
        String name = name(file);
        List<WrittenSolve> solves = WrittenSolve.read(name, bytes(terminal, file));
        HoldTrials trials = new HoldTrials(name, solves);
        if (trials.examples().isEmpty()) {
            throw new CommandFailure(name + " holds walkthroughs only; they do not say what a hand does in a solve");
        }
        return trials;
    }

    /** What a file is called in errors. */
    static String name(String file) {
        return file.equals(PIPED) ? "standard input" : file;
    }

    static byte[] bytes(Terminal terminal, String file) {
        try {
            return file.equals(PIPED) ? terminal.in().readAllBytes() : Files.readAllBytes(Path.of(file));
        } catch (IOException e) {
            throw new CommandFailure("cannot read " + file + ": " + Reasons.of(e), e);
        }
    }
}
