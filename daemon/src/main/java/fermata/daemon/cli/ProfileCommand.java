package fermata.daemon.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** What has to do with stream profiles. */
@Command(name = "profile", mixinStandardHelpOptions = true, description = "Work with stream profiles.")
final class ProfileCommand implements Runnable {
    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        throw new ParameterException(new CommandLine(spec), "Missing command: find or check");
    }
}
