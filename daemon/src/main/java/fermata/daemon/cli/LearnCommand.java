package fermata.daemon.cli;

import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldTrainer;
import fermata.analysis.hold.sequence.SequenceBook;
import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.asked.WrittenFile;
import fermata.daemon.cli.text.Words;
import fermata.daemon.holdmodel.HoldFiles;
import fermata.daemon.store.FileFaults;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Learns the model of the hold inference anew; what comes along was made by it. */
@Command(
        name = "learn",
        mixinStandardHelpOptions = true,
        description = {
            "Learn from written reconstructions what holds are inferred by.",
            "The same file gives the same model. Walkthroughs are left out."
        })
final class LearnCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "FILE", description = "Reconstructions, one JSON object a line; - for what is piped in.")
    private String file;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            required = true,
            description = "Where to write weights.txt, sequences.txt and, to compare with, markov-weights.txt.")
    private Path out;

    LearnCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        List<HoldExample> examples = WrittenFile.read(terminal, file).examples();
        HoldModel model = HoldTrainer.learn(examples, HoldFiles.commonSequences(), HoldTrainer.Settings.USUAL);
        HoldModel markov = HoldTrainer.learn(examples, SequenceBook.EMPTY, HoldTrainer.Settings.MARKOV);
        write("weights.txt", model.weights().print());
        write("sequences.txt", model.book().print());
        write("markov-weights.txt", markov.weights().print());
        terminal.err().println("learned from " + Words.counted(examples.size(), "solve") + "; wrote to " + out);
        return 0;
    }

    private void write(String name, String text) {
        try {
            Files.createDirectories(out);
            Files.writeString(out.resolve(name), text);
        } catch (IOException e) {
            throw new CommandFailure("cannot write " + out.resolve(name) + ": " + FileFaults.reason(e), e);
        }
    }
}
