package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.asked.WrittenFile;
import fermata.daemon.cli.text.AssessmentText;
import fermata.daemon.holdmodel.HoldFiles;
import fermata.daemon.holdmodel.HoldTrials;
import fermata.daemon.json.AssessmentView;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Holds the inference of holds against reconstructions. */
@Command(
        name = "assess",
        mixinStandardHelpOptions = true,
        description = {
            "Say how well holds and rotations are inferred, against written reconstructions.",
            "The hand's text is stripped to the turns that the centres feel, without times, and read again."
        })
final class AssessCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "FILE", description = "Reconstructions, one JSON object a line; - for what is piped in.")
    private String file;

    @Option(
            names = "--cross-validate",
            description = {
                "Learn anew from the rest for each part of the file, instead of reading by the",
                "model that comes along. Solves of one group are never split."
            })
    private boolean crossValidate;

    @Option(
            names = "--folds",
            paramLabel = "N",
            description = "Into how many parts to deal the groups. Default: 10. With more than there are: one each.")
    private Integer folds;

    AssessCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (folds != null && folds < 2) {
            throw new CommandFailure("--folds " + folds + " leaves nothing to learn from; at least 2");
        }
        if (folds != null && !crossValidate) {
            throw new CommandFailure("--folds " + folds + " says how to --cross-validate; give both");
        }
        HoldTrials trials = WrittenFile.read(terminal, file);
        AssessmentView view = crossValidate ? crossValidated(trials) : trials.withShipped();
        json.print(terminal, view, () -> AssessmentText.lines(view));
        return 0;
    }

    private AssessmentView crossValidated(HoldTrials trials) {
        try {
            return trials.crossValidated(
                    folds == null ? 10 : folds, HoldFiles.commonSequences(), terminal.err()::println);
        } catch (IllegalArgumentException e) {
            throw new CommandFailure("cannot cross-validate " + file + ": " + e.getMessage(), e);
        }
    }
}
