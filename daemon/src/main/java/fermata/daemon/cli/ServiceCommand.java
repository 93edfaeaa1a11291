package fermata.daemon.cli;

import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.ListenOptions;
import fermata.daemon.cli.asked.SolverOptions;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.asked.UnitOptions;
import fermata.daemon.store.FileFaults;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Writes the systemd unit that keeps {@link ListenCommand} running from when the board starts. */
@Command(
        name = "service",
        mixinStandardHelpOptions = true,
        description = {
            "Write a systemd unit that listens whenever the board is on, with these options of listen.",
            "With neither --lan nor --no-lan it asks whether other machines may reach the pages."
        },
        footer = {
            "",
            "Then, as the user who practises:",
            "  systemctl --user daemon-reload",
            "  systemctl --user enable --now fermata-listen.service",
            "  loginctl enable-linger                 # so that it runs while you are not logged in",
            "  sudo usermod -aG bluetooth \"$USER\"     # if BlueZ refuses you; log in again after it",
            "What it says: journalctl --user -u fermata-listen"
        })
final class ServiceCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private SolverOptions solver;

    @Mixin
    private ListenOptions listening;

    @Mixin
    private UnitOptions units;

    ServiceCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        solver.origin();
        listening.profileFile();
        listening.capture();
        units.checkProgram();
        List<String> arguments = new ArrayList<>(List.of("listen"));
        arguments.addAll(home.words());
        arguments.addAll(solver.words());
        arguments.addAll(listening.words());
        if (isForTheNetwork()) {
            arguments.add("--lan");
        }
        units.write(terminal, List.of("fermata-listen.service"), arguments);
        return 0;
    }

    private boolean isForTheNetwork() {
        Optional<Boolean> said = listening.lan();
        if (said.isPresent() || !listening.hasPages()) {
            return said.orElse(false);
        }
        terminal.err()
                .print("May other machines on this network reach the pages, once their browsers are paired? (y/N) ");
        terminal.err().flush();
        try {
            String answer = new BufferedReader(new InputStreamReader(terminal.in(), StandardCharsets.UTF_8)).readLine();
            return answer != null && List.of("y", "yes").contains(answer.strip().toLowerCase(Locale.ROOT));
        } catch (IOException e) {
            throw new CommandFailure("cannot read your answer: " + FileFaults.reason(e) + "; say --lan or --no-lan", e);
        }
    }
}
