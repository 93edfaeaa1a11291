package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.demo.Rehearsal;
import fermata.daemon.store.FileFaults;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes an evening up; the demo runs it as a process of its own. */
@Command(name = "rehearse", hidden = true, description = "Write a made-up evening as a turn stream.")
final class RehearseCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Option(names = "--solves", required = true)
    private int solves;

    @Option(names = "--seed", required = true)
    private long seed;

    @Parameters(paramLabel = "FILE")
    private Path file;

    RehearseCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (solves < 1) {
            throw new CommandFailure("--solves " + solves + " is not 1 or more");
        }
        try {
            Files.write(file, Rehearsal.evening(solves, seed).lines());
        } catch (IOException e) {
            throw new CommandFailure("cannot write " + file + ": " + FileFaults.reason(e), e);
        }
        terminal.err().println("wrote " + file);
        return 0;
    }
}
