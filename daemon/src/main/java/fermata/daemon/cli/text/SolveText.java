package fermata.daemon.cli.text;

import fermata.daemon.json.SolveView;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A solve for people, in 80 columns. Stateless. */
public final class SolveText {
    private static final int COLUMNS = 80;
    private static final int INDENT = 33;

    private SolveText() {}

    /** One solve, stage by stage. */
    public static List<String> lines(SolveView solve, boolean core) {
        HandText hand = new HandText(solve, core);
        List<String> lines = new ArrayList<>();
        lines.add("Solve " + solve.id() + ", no. " + solve.number() + " of " + Words.day(solve.day())
                + (solve.startedAt() == null ? "" : ", " + solve.startedAt().substring(11)));
        lines.add("");
        lines.add("  " + headline(solve));
        lines.add("");
        lines.addAll(beginning(solve));
        lines.addAll(RestsText.usual(solve.usual()));
        lines.addAll(wrapped("  in hand    ", List.of(hand.beginning().split(" "))));
        lines.addAll(hand.regrips());
        lines.add("");
        lines.add(
                String.format(Locale.ROOT, "  %-14s %7s %6s  %s", "stage", "time", "rests", "turns, rests in seconds"));
        for (SolveView.Stage stage : stages(solve)) {
            lines.addAll(stage(solve, stage, hand));
        }
        lines.addAll(legend(solve, hand));
        lines.addAll(RestsText.lines(solve));
        return lines.stream().map(String::stripTrailing).toList();
    }

    private static String headline(SolveView solve) {
        List<String> parts = new ArrayList<>();
        parts.add(solve.solved() ? Seconds.of(solve.timeUs()) : solve.outcome().replace('_', ' '));
        parts.add(Words.counted(solve.turns().size(), "turn"));
        if (solve.timeUs() != null && solve.timeUs() > 0) {
            // Turns per second counts from the first turn, so the first one is not in the time.
            parts.add(String.format(Locale.ROOT, "%.2f a second", (solve.turns().size() - 1) * 1e6 / solve.timeUs()));
        }
        parts.add(solve.method() + (solve.crossColour() == null ? "" : ", " + solve.crossColour() + " cross"));
        parts.add(RangeText.hand(solve.hand()));
        if (solve.setAside()) {
            parts.add("set aside");
        }
        return String.join("   ", parts);
    }

    private static List<String> beginning(SolveView solve) {
        List<String> lines = new ArrayList<>();
        if (solve.scramble() != null) {
            lines.addAll(wrapped("  scramble   ", List.of(solve.scramble().split("\\s+"))));
        }
        lines.add("  boundary   " + boundary(solve.scrambleEnd()));
        if (solve.gapUs() != null) {
            lines.add("  gap        " + Seconds.of(solve.gapUs())
                    + " between the scramble's last turn and the first turn");
        }
        return lines;
    }

    private static String boundary(SolveView.Boundary end) {
        return switch (end.known()) {
            case "announced_state" -> "the announced scramble was reached";
            case "announced_words" -> "the announced words were turned in another hold, or not from solved";
            default ->
                String.format(
                        Locale.ROOT, "inferred, %.0f %% likely: no scramble was announced", 100 * end.probability());
        };
    }

    private static List<SolveView.Stage> stages(SolveView solve) {
        if (!solve.stages().isEmpty()) {
            return solve.stages();
        }
        return List.of(new SolveView.Stage(
                "all",
                null,
                List.of(),
                0,
                solve.turns().size(),
                solve.timeUs() == null ? null : 0L,
                solve.timeUs(),
                List.of()));
    }

    private static List<String> stage(SolveView solve, SolveView.Stage stage, HandText hand) {
        String time = stage.startUs() == null ? "-" : Seconds.of(stage.endUs() - stage.startUs());
        long rests = solve.rests().stream()
                .filter(SolveView.Rest::called)
                .filter(rest -> stage.from() <= rest.afterTurn() + 1 && rest.afterTurn() + 1 < stage.to())
                .mapToLong(SolveView.Rest::lengthUs)
                .sum();
        String head =
                String.format(Locale.ROOT, "  %-14s %7s %6s  ", name(stage), time, rests == 0 ? "" : Seconds.of(rests));
        return wrapped(head, words(solve, stage, hand));
    }

    /** A pair's case is a long word for where its pieces were: the document has it, the table does without. */
    private static String name(SolveView.Stage stage) {
        boolean hasShortCase = stage.caseName() != null && !stage.name().startsWith("pair");
        return stage.name() + (hasShortCase ? " " + stage.caseName() : "");
    }

    /** The turns of a stage; before a turn the rest that came before it, after it what is not certain about it. */
    private static List<String> words(SolveView solve, SolveView.Stage stage, HandText hand) {
        Map<Integer, Long> restBefore = new HashMap<>();
        solve.rests().stream()
                .filter(SolveView.Rest::called)
                .forEach(rest -> restBefore.put(rest.afterTurn() + 1, rest.lengthUs()));
        Map<Integer, String> lostBefore = new HashMap<>();
        solve.gaps()
                .forEach(gap -> lostBefore.put(
                        gap.afterTurn() + 1, gap.lost() == null ? "[? lost]" : "[" + gap.lost() + " lost]"));
        List<String> words = new ArrayList<>();
        for (int index = stage.from(); index < stage.to(); index++) {
            if (lostBefore.containsKey(index)) {
                words.add(lostBefore.get(index));
            }
            if (restBefore.containsKey(index)) {
                words.add("(" + Seconds.tenths(restBefore.get(index)) + ")");
            }
            words.addAll(hand.words(index));
        }
        if (stage.to() == solve.turns().size() && lostBefore.containsKey(stage.to())) {
            words.add(lostBefore.get(stage.to()));
        }
        return words.isEmpty() ? List.of("-") : words;
    }

    private static List<String> wrapped(String head, List<String> words) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder(head);
        String indent = " ".repeat(Math.min(head.length(), INDENT));
        for (String word : words) {
            if (line.length() + word.length() > COLUMNS) {
                lines.add(line.toString());
                line = new StringBuilder(indent);
            }
            line.append(word).append(' ');
        }
        lines.add(line.toString());
        return lines;
    }

    private static List<String> legend(SolveView solve, HandText hand) {
        List<String> lines = new ArrayList<>(hand.legend());
        if (solve.turns().stream().anyMatch(turn -> turn.source().equals("repaired"))) {
            lines.add("  * not heard itself, but read from a later frame's history");
        }
        if (!solve.gaps().isEmpty()) {
            lines.add("  [lost] turns that were not heard");
        }
        if (!lines.isEmpty()) {
            lines.add(0, "");
        }
        return lines;
    }
}
