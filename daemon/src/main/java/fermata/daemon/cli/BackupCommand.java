package fermata.daemon.cli;

import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.store.Backup;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Copies the practice into one file. */
@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        description = {
            "Copy the whole practice into a new file, also while listen runs.",
            "The file holds everything, names and device addresses too. To restore it: end listen, put it into an"
                    + " empty home as practice.db, and listen again."
        })
final class BackupCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Parameters(paramLabel = "FILE", description = "Where to, such as /media/stick/practice-2026-11-25.db.")
    private Path file;

    BackupCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        long bytes = Backup.write(home.home(terminal), file);
        terminal.out().println(file + ": " + bytes + " bytes");
        return 0;
    }
}
