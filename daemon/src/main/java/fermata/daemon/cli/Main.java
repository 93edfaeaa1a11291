package fermata.daemon.cli;

import fermata.daemon.capture.JournalException;
import fermata.daemon.cli.asked.CommandFailure;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.json.BadLineException;
import fermata.daemon.store.StoreException;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** The program. */
public final class Main {
    private Main() {}

    /** Runs a command and ends the process with its exit code. */
    public static void main(String[] arguments) {
        Logs.quieten();
        System.exit(run(Terminal.ofProcess(), arguments));
    }

    /** Runs a command and gives its exit code. */
    public static int run(Terminal terminal, String... arguments) {
        CommandLine line = new CommandLine(new RootCommand())
                .addSubcommand(new CommandLine.HelpCommand())
                .addSubcommand(new ListenCommand(terminal))
                .addSubcommand(new DemoCommand(terminal))
                .addSubcommand(new ImportCommand(terminal))
                .addSubcommand(new ExportCommand(terminal))
                .addSubcommand(new BackupCommand(terminal))
                .addSubcommand(new RecoverCommand(terminal))
                .addSubcommand(new SolvesCommand(terminal))
                .addSubcommand(new ShowCommand(terminal))
                .addSubcommand(new NightCommand(terminal))
                .addSubcommand(new CasesCommand(terminal))
                .addSubcommand(new MorningCommand(terminal))
                .addSubcommand(new TimerCommand(terminal))
                .addSubcommand(new ServiceCommand(terminal))
                .addSubcommand(new CommandLine(new ProfileCommand())
                        .addSubcommand(new ProfileFindCommand(terminal))
                        .addSubcommand(new ProfileCheckCommand(terminal)))
                .addSubcommand(new CalibrateCommand(terminal))
                .addSubcommand(new SequencesCommand(terminal))
                .addSubcommand(new AssessCommand(terminal))
                .addSubcommand(new LearnCommand(terminal))
                .addSubcommand(new PairCommand(terminal))
                .addSubcommand(new ScrambleCommand(terminal))
                .addSubcommand(new RehearseCommand(terminal))
                .addSubcommand(new PrepareCommand(terminal))
                .setOut(terminal.out())
                .setErr(terminal.err())
                .setUsageHelpAutoWidth(false)
                .setExecutionExceptionHandler(new Faults(terminal));
        sayVersionEverywhere(line);
        int code = line.execute(arguments);
        terminal.out().flush();
        terminal.err().flush();
        return code == ExitCode.OK ? codeOfPrinting(terminal) : code;
    }

    /** What was not printed was not done, whichever command printed it. */
    private static int codeOfPrinting(Terminal terminal) {
        if (!terminal.out().checkError()) {
            return ExitCode.OK;
        }
        terminal.err().println("fermata: cannot print the answer: the output is closed or its disk is full");
        return ExitCode.USAGE;
    }

    private static void sayVersionEverywhere(CommandLine line) {
        line.getSubcommands().values().forEach(command -> {
            command.getCommandSpec().version(line.getCommandSpec().version());
            sayVersionEverywhere(command);
        });
    }

    /** Says what went wrong, in one line where it is not our fault. */
    private record Faults(Terminal terminal) implements IExecutionExceptionHandler {
        private static final List<Class<? extends RuntimeException>> NOT_OURS =
                List.of(CommandFailure.class, BadLineException.class, StoreException.class, JournalException.class);

        @Override
        public int handleExecutionException(Exception fault, CommandLine line, ParseResult parsed) {
            CommandSpec command = line.getCommandSpec();
            if (NOT_OURS.stream().anyMatch(type -> type.isInstance(fault))) {
                terminal.err().println(command.qualifiedName() + ": " + fault.getMessage());
                return ExitCode.USAGE;
            }
            terminal.err().println(command.qualifiedName() + ": a fault of fermata's own; please report this:");
            fault.printStackTrace(terminal.err());
            return ExitCode.SOFTWARE;
        }
    }
}
