package fermata.daemon.cli;

import fermata.daemon.cli.asked.Days;
import fermata.daemon.cli.asked.HomeOption;
import fermata.daemon.cli.asked.JsonOption;
import fermata.daemon.cli.asked.Terminal;
import fermata.daemon.cli.text.Seconds;
import fermata.daemon.cli.text.Words;
import fermata.daemon.json.SolvesView;
import fermata.daemon.practice.Practice;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Lists solves. */
@Command(name = "solves", mixinStandardHelpOptions = true, description = "List the solves, oldest first.")
final class SolvesCommand implements Callable<Integer> {
    private static final String ABANDONED = "abandoned";

    private final Terminal terminal;

    @Mixin
    private HomeOption home;

    @Mixin
    private JsonOption json;

    @Parameters(paramLabel = "DAY", arity = "0..1", description = "Only this practice day, such as 2026-11-24.")
    private String day;

    SolvesCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        SolvesView solves = home.read(terminal, practice -> day == null ? practice.solves() : ofDay(practice));
        json.print(terminal, solves, () -> text(solves));
        return 0;
    }

    private SolvesView ofDay(Practice practice) {
        LocalDate wanted = Days.parse(day);
        SolvesView solves = practice.solves(wanted);
        if (solves.solves().isEmpty()) {
            throw Days.unknown(wanted, practice);
        }
        return solves;
    }

    private static List<String> text(SolvesView view) {
        List<String> lines = new ArrayList<>();
        String day = "";
        for (SolvesView.Item solve : view.solves()) {
            if (!solve.day().equals(day)) {
                day = solve.day();
                if (!lines.isEmpty()) {
                    lines.add("");
                }
                lines.add(Words.day(day));
                lines.add(String.format(
                        Locale.ROOT,
                        "%5s  %-10s %-5s %9s %6s %8s  %s",
                        "no.",
                        "id",
                        "at",
                        "time",
                        "turns",
                        "rests",
                        "method"));
            }
            lines.add(line(solve).stripTrailing());
        }
        return lines.isEmpty() ? List.of("No solves.") : lines;
    }

    private static String line(SolvesView.Item solve) {
        List<String> remarks = new ArrayList<>();
        if (solve.outcome().equals(ABANDONED)) {
            remarks.add(ABANDONED);
        }
        if (solve.lost() > 0) {
            remarks.add(Words.counted(solve.lost(), "turn") + " lost");
        }
        if (solve.setAside()) {
            remarks.add("set aside");
        }
        return String.format(
                Locale.ROOT,
                "%5d  %-10s %-5s %9s %6d %8s  %-6s  %s",
                solve.number(),
                solve.id(),
                solve.startedAt() == null ? "-" : solve.startedAt().substring(11, 16),
                time(solve),
                solve.turns(),
                Seconds.of(solve.restUs()),
                solve.method(),
                String.join(", ", remarks));
    }

    /** After a loss nobody can say whether it was solved, and so not whether its time is one. */
    private static String time(SolvesView.Item solve) {
        return solve.solved() ? Seconds.of(solve.timeUs()) : solve.outcome().equals(ABANDONED) ? "DNF" : "?";
    }
}
