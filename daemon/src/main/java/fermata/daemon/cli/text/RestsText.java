package fermata.daemon.cli.text;

import fermata.daemon.json.SolveView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Why a solve rested, for people, in 80 columns: its called rests with their causes, and what could be seen. */
final class RestsText {
    private static final int CAUSES_TOLD = 3;
    private static final double WORTH_TELLING = 0.1;

    private RestsText() {}

    /** Nothing, where nothing rested and nothing was looked for. */
    static List<String> lines(SolveView solve) {
        List<String> lines = new ArrayList<>();
        List<SolveView.Rest> called =
                solve.rests().stream().filter(SolveView.Rest::called).toList();
        if (!called.isEmpty()) {
            lines.add("");
            lines.add("  rests of 0.3 s and more, beyond the usual pace, shared among causes");
            called.forEach(rest -> lines.add(rest(solve, rest)));
        }
        List<SolveView.Looking> told = solve.looking().stream()
                .filter(looking -> !looking.finding().equals("in_time") || looking.sooner() != null)
                .toList();
        if (!told.isEmpty()) {
            lines.add("");
            lines.add("  looking ahead");
            told.forEach(looking -> lines.addAll(
                    Wrapped.hanging(String.format(Locale.ROOT, "  %-8s", looking.stage()), looking.sentence())));
            lines.addAll(Wrapped.hanging("  ", "(" + solve.lookingModel() + ")"));
        }
        if (!solve.slips().isEmpty()) {
            lines.add("");
            solve.slips()
                    .forEach(
                            slip -> lines.add("  a slip, taken back: turns " + slip.from() + " to " + (slip.to() - 1)));
        }
        return lines;
    }

    /** The usual times, held beside this solve's. */
    static List<String> usual(SolveView.Usual usual) {
        if (usual == null) {
            return List.of();
        }
        return List.of(
                "  usual      " + Seconds.ofFigure(usual.timeLowUs()) + " to " + Seconds.ofFigure(usual.timeHighUs())
                        + ", the middle half of the " + Words.counted(usual.solves(), "solve") + " before");
    }

    private static String rest(SolveView solve, SolveView.Rest rest) {
        StringBuilder line = new StringBuilder(String.format(
                Locale.ROOT,
                "  %-8s turn %3d  %5s %s ",
                stage(solve, rest.afterTurn() + 1),
                rest.afterTurn() + 1,
                Seconds.ofFigure(rest.excessUs()),
                Boolean.TRUE.equals(rest.fermata()) ? "fermata" : "       "));
        rest.causes().stream()
                .filter(cause -> cause.shareUs() >= WORTH_TELLING * rest.excessUs())
                .limit(CAUSES_TOLD)
                .forEach(cause ->
                        line.append(' ').append(cause.cause()).append(' ').append(Seconds.ofFigure(cause.shareUs())));
        return line.toString();
    }

    private static String stage(SolveView solve, int turn) {
        return solve.stages().stream()
                .filter(stage -> stage.from() <= turn && turn < stage.to())
                .map(SolveView.Stage::name)
                .findFirst()
                .orElse("");
    }
}
