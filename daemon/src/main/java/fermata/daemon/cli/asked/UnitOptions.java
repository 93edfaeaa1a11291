package fermata.daemon.cli.asked;

import fermata.daemon.service.SystemdUnits;
import fermata.daemon.store.FileFaults;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;

/** Where systemd units go, and which program they run. */
public final class UnitOptions {
    @Option(
            names = "--program",
            paramLabel = "FILE",
            required = true,
            description = "The program that systemd runs, by its full path, such as /home/cook/fermata/fermata.")
    private Path program;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Where to write them. Default: ~/.config/systemd/user, where systemd looks for them.")
    private Path out;

    /** Ends the command if systemd could not run the program. */
    public void checkProgram() {
        if (!program.isAbsolute() || !Files.isRegularFile(program) || !Files.isExecutable(program)) {
            throw new CommandFailure("--program " + program + " is not the full path of a program that can be run");
        }
    }

    /** Writes these units, each of which may run the program with these arguments, and prints their names. */
    public void write(Terminal terminal, List<String> units, List<String> arguments) {
        checkProgram();
        Path directory = out == null
                ? terminal.userHome().resolve(".config").resolve("systemd").resolve("user")
                : out;
        for (String unit : units) {
            Path file = directory.resolve(unit);
            try {
                SystemdUnits.write(directory, unit, program, arguments);
            } catch (IOException e) {
                throw new CommandFailure("cannot write " + file + ": " + FileFaults.reason(e), e);
            }
            terminal.out().println(file);
        }
    }
}
