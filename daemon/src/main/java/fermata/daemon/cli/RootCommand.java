package fermata.daemon.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program without a command. */
@Command(
        name = "fermata",
        version = "fermata 0.1.0",
        mixinStandardHelpOptions = true,
        header = "Logs one-handed practice on a turn-reporting cube and says where the seconds went.",
        footer = {
            "",
            "Every command takes --home DIR; commands that print take --json.",
            "Try it without a cube:  fermata demo"
        })
final class RootCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(new CommandLine(spec), "Missing command");
    }
}
