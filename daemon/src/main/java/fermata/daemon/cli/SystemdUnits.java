package fermata.daemon.cli;

import fermata.daemon.store.FileFaults;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;

/** Where systemd units go, and which program they run. */
final class SystemdUnits {
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
    void checkProgram() {
        if (!program.isAbsolute() || !Files.isRegularFile(program) || !Files.isExecutable(program)) {
            throw new CommandFailure("--program " + program + " is not the full path of a program that can be run");
        }
    }

    /** Writes these units, each of which may run the program with these arguments, and prints their names. */
    void write(Terminal terminal, List<String> units, List<String> arguments) {
        checkProgram();
        Path directory = out == null
                ? terminal.userHome().resolve(".config").resolve("systemd").resolve("user")
                : out;
        String command = quoted(program.toString())
                + arguments.stream().map(word -> " " + quoted(word)).collect(Collectors.joining());
        for (String unit : units) {
            Path file = directory.resolve(unit);
            try {
                Files.createDirectories(directory);
                Files.writeString(file, template(unit).replace("@COMMAND@", command));
            } catch (IOException e) {
                throw new CommandFailure("cannot write " + file + ": " + FileFaults.reason(e), e);
            }
            terminal.out().println(file);
        }
    }

    /** As systemd.service(5) wants it: per cent begins a specifier, a dollar sign a variable. */
    private static String quoted(String word) {
        String escaped = word.replace("\\", "\\\\")
                .replace("\"", "\\\"")
                .replace("%", "%%")
                .replace("$", "$$");
        return escaped.matches("[A-Za-z0-9:=/._%$-]+") ? escaped : '"' + escaped + '"';
    }

    private static String template(String unit) throws IOException {
        try (InputStream stream = SystemdUnits.class.getResourceAsStream("/fermata/daemon/cli/" + unit)) {
            if (stream == null) {
                throw new IllegalStateException("the program lacks its own file " + unit);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
