package fermata.daemon.cli;

import fermata.daemon.cli.asked.Days;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.OverWord;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.text.CasesText;
import fermata.daemon.json.CasesView;
import fermata.daemon.json.Over;
import fermata.daemon.practice.Practice;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Shows what each case costs. */
@Command(
        name = "cases",
        mixinStandardHelpOptions = true,
        description = "Show the cases that were met, those first that cost the most time.")
final class CasesCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Option(
            names = "--over",
            paramLabel = "RANGE",
            defaultValue = "all",
            converter = OverWord.class,
            description = "night (the last one), week (the seven days up to it) or all. Default: all.")
    private Over over;

    CasesCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        CasesView cases = home.read(terminal, this::ask);
        json.print(terminal, cases, () -> CasesText.lines(cases));
        return 0;
    }

    private CasesView ask(Practice practice) {
        CasesView cases = practice.cases(over);
        if (cases.to() == null) {
            throw Days.none();
        }
        return cases;
    }
}
