package fermata.daemon.cli;

import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.asked.UnitOptions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

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
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private UnitOptions units;

    TimerCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        List<String> arguments = new ArrayList<>(List.of("morning"));
        arguments.addAll(home.words());
        units.write(terminal, List.of("fermata-morning.service", "fermata-morning.timer"), arguments);
        return 0;
    }
}
