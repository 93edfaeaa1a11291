package fermata.daemon.cli.asked;

import fermata.daemon.holdmodel.HoldTrials;
import fermata.daemon.store.FileFaults;
import fermata.daemon.turnfile.WrittenSolve;
import java.io.IOException;
import java.io.InputStream;
import java.io.PushbackInputStream;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** Reads files that are named on the command line; a dash is what is piped in. Stateless. */
public final class WrittenFile {
    private static final String PIPED = "-";
    private static final byte[] MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    private WrittenFile() {}

    public static HoldTrials read(Terminal terminal, String file) {
        String name = name(file);
        List<WrittenSolve> solves = WrittenSolve.read(name, bytes(terminal, file));
        HoldTrials trials = new HoldTrials(name, solves);
        if (trials.examples().isEmpty()) {
            throw new CommandFailure(name + " holds walkthroughs only; they do not say what a hand does in a solve");
        }
        return trials;
    }

    /** What a file is called in errors. */
    public static String name(String file) {
        return file.equals(PIPED) ? "standard input" : file;
    }

    public static byte[] bytes(Terminal terminal, String file) {
        try (InputStream in = open(terminal, file)) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new CommandFailure("cannot read " + file + ": " + FileFaults.reason(e), e);
        }
    }

    public static InputStream open(Terminal terminal, String file) throws IOException {
        try {
            return withoutMark(file.equals(PIPED) ? terminal.in() : Files.newInputStream(Path.of(file)));
        } catch (InvalidPathException e) {
            throw new IOException("its name cannot be read in this locale; try LC_ALL=C.UTF-8", e);
        }
    }

    /** Some editors put a byte order mark before UTF-8; a reader may ignore it (RFC 8259, section 8.1). */
    private static InputStream withoutMark(InputStream in) throws IOException {
        PushbackInputStream text = new PushbackInputStream(in, MARK.length);
        byte[] first = text.readNBytes(MARK.length);
        if (!Arrays.equals(first, MARK)) {
            text.unread(first);
        }
        return text;
    }
}
