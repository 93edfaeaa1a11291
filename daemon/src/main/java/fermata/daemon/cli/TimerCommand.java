package fermata.daemon.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes the systemd units that run {@link MorningCommand} when a practice day has ended. */
@Command(
        name = "timer",
        mixinStandardHelpOptions = true,
        description = "Write systemd units that run the command morning after each practice day.",
        footer = {
            "",
            "Then, as the user who practises:",
            "  systemctl --user daemon-reload",
            "  systemctl --user enable --now fermata-morning.timer",
            "  loginctl enable-linger        # so that it runs while you are not logged in"
        })
final class TimerCommand implements Callable<Integer> {
    private static final List<String> UNITS = List.of("fermata-morning.service", "fermata-morning.timer");

    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Option(
            names = "--program",
            paramLabel = "FILE",
            required = true,
            description = "The program that the timer runs, by its full path, such as /home/cook/fermata/fermata.")
    private Path program;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Where to write them. Default: ~/.config/systemd/user, where systemd looks for them.")
    private Path out;

    TimerCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (!program.isAbsolute() || !Files.isExecutable(program)) {
            throw new CommandFailure("--program " + program + " is not the full path of a program that can be run");
        }
        Path directory = out == null
                ? terminal.userHome().resolve(".config").resolve("systemd").resolve("user")
                : out;
        for (String unit : UNITS) {
            Path file = directory.resolve(unit);
            try {
                Files.createDirectories(directory);
                Files.writeString(file, template(unit).replace("@COMMAND@", command()));
            } catch (IOException e) {
                throw new CommandFailure("cannot write " + file + ": " + Reasons.of(e), e);
            }
            terminal.out().println(file);
        }
        return 0;
    }

    private String command() {
        List<String> words = new ArrayList<>(List.of(program.toString(), "morning"));
        home.named()
                .ifPresent(named ->
                        words.addAll(List.of("--home", named.directory().toString())));
        return words.stream().map(TimerCommand::quoted).collect(Collectors.joining(" "));
    }

    /** As systemd.service(5) wants it: per cent begins a specifier, a dollar sign a variable. */
    private static String quoted(String word) {
        String escaped = word.replace("\\", "\\\\")
                .replace("\"", "\\\"")
                .replace("%", "%%")
                .replace("$", "$$");
        return escaped.matches("[A-Za-z0-9/._%$-]+") ? escaped : '"' + escaped + '"';
    }

    private static String template(String unit) throws IOException {
        try (InputStream stream = TimerCommand.class.getResourceAsStream("/fermata/daemon/cli/" + unit)) {
            if (stream == null) {
                throw new IllegalStateException("the program lacks its own file " + unit);
            }
            return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
