package fermata.daemon.cli.text;

import fermata.daemon.json.SolveView;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The words of a solve's turns, as the hand made them or as the centres felt them. */
final class HandText {
    /** What is less probable says so. */
    private static final double SURE = 0.9;

    /** Less probable regrips are in the count and the document only. */
    private static final double REGRIP_SHOWN = 0.5;

    private final SolveView solve;
    private final boolean core;
    private final Map<Integer, SolveView.Rotation> rotationBefore = new HashMap<>();
    private final Map<Integer, Double> regripBefore = new HashMap<>();

    /**
     * @param core whether to print turns by the centres even where it is known what the hand did
     */
    HandText(SolveView solve, boolean core) {
        this.solve = solve;
        this.core = core || solve.holds().known().equals("untold");
        solve.rotations().forEach(rotation -> rotationBefore.put(rotation.beforeTurn(), rotation));
        solve.regrips().stream()
                .filter(regrip -> regrip.p() >= REGRIP_SHOWN)
                .forEach(regrip -> regripBefore.put(regrip.beforeTurn(), regrip.p()));
    }

    /** The words of one turn: a rotation and a regrip before it, then itself, unless it ends a printed slice. */
    List<String> words(int index) {
        SolveView.Turn turn = solve.turns().get(index);
        String repaired = turn.source().equals("repaired") ? "*" : "";
        if (core) {
            return List.of(turn.core() + repaired);
        }
        List<String> words = new ArrayList<>();
        if (rotationBefore.containsKey(index)) {
            SolveView.Rotation rotation = rotationBefore.get(index);
            words.add(rotation.rotation() + probability(rotation.p()));
        }
        if (regripBefore.containsKey(index)) {
            words.add("," + probability(regripBefore.get(index)));
        }
        if (!endsSlice(index)) {
            words.add(turn.hand() + probability(turn.p()) + repaired);
        }
        return words;
    }

    /** A slice stands on each of its turns; the next one would begin in another hold. */
    private boolean endsSlice(int index) {
        SolveView.Turn turn = solve.turns().get(index);
        if (index == 0 || "MES".indexOf(turn.hand().charAt(0)) < 0) {
            return false;
        }
        SolveView.Turn before = solve.turns().get(index - 1);
        return before.hand().equals(turn.hand()) && before.hold().equals(turn.hold());
    }

    private static String probability(double p) {
        return p >= SURE ? "" : String.format(Locale.ROOT, "(%.2f)", p);
    }

    /** How it is known what the hand did, and how the cube was held first. */
    String beginning() {
        String known = solve.holds().known();
        if (known.equals("untold")) {
            return "untold, as " + (solve.gaps().isEmpty() ? "no solve has so many turns" : "turns were lost")
                    + "; turns are named by the centres";
        }
        if (core) {
            return known + ", not shown; turns are named by the centres";
        }
        SolveView.Turn first = solve.turns().get(0);
        String word = Orientation.ofLetters(first.hold()).word();
        return (known.equals("stated") ? "as you said" : "inferred") + "; begun"
                + (word.isEmpty() ? "" : " with " + word) + probability(first.p()) + ", "
                + colour(first.hold().charAt(0)) + " up, " + colour(first.hold().charAt(1)) + " in front";
    }

    private String colour(char face) {
        return solve.faceColours().get(String.valueOf(face));
    }

    /** How many regrips there were, where something is known of it. */
    List<String> regrips() {
        SolveView.RegripCount count = solve.regripCount();
        return core || count.expected() == null
                ? List.of()
                : List.of(String.format(
                        Locale.ROOT,
                        "  regrips    %.1f expected, %d to %d (95 %%); from a model of the fingers",
                        count.expected(),
                        count.low(),
                        count.high()));
    }

    List<String> legend() {
        List<String> lines = new ArrayList<>(unsureLegend());
        if (!core && !regripBefore.isEmpty()) {
            lines.add("  ,(0.62) a regrip, and how probable it is; below 0.5 none is marked");
        }
        return lines;
    }

    private List<String> unsureLegend() {
        boolean unsure = !core
                && (solve.turns().stream().anyMatch(turn -> turn.p() < SURE)
                        || solve.rotations().stream().anyMatch(rotation -> rotation.p() < SURE));
        return unsure
                ? List.of("  z(0.83) inferred, and 83 % likely; what bears no number is 90 % likely or more")
                : List.of();
    }
}
