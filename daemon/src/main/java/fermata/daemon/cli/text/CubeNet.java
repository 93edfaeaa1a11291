package fermata.daemon.cli.text;

import fermata.daemon.json.SolveView;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The cube unfolded, a letter a sticker, held by its centres. Stateless. */
public final class CubeNet {
    private static final String INDENT = "  ";
    private static final String SIDE = "       ";

    private CubeNet() {}

    /** The net of a state, a line a row of stickers. */
    public static List<String> lines(SolveView solve, int turnsDone, String facelets) {
        List<String> lines = new ArrayList<>();
        lines.add("Solve " + solve.id() + " after " + turnsDone + " of "
                + solve.turns().size() + " turns" + where(solve, turnsDone));
        lines.add("");
        for (int row = 0; row < 3; row++) {
            lines.add(INDENT + SIDE + row(facelets, 0, row));
        }
        for (int row = 0; row < 3; row++) {
            // Left, front, right, back stand side by side; in the letters the faces come in the order U R F D L B.
            lines.add(INDENT + row(facelets, 4, row) + "  " + row(facelets, 2, row) + "  " + row(facelets, 1, row)
                    + "  " + row(facelets, 5, row));
        }
        for (int row = 0; row < 3; row++) {
            lines.add(INDENT + SIDE + row(facelets, 3, row));
        }
        lines.add("");
        lines.add(INDENT
                + solve.faceColours().entrySet().stream()
                        .map(colour -> colour.getKey() + " " + colour.getValue())
                        .collect(Collectors.joining("  ")));
        return lines.stream().map(String::stripTrailing).toList();
    }

    private static String row(String facelets, int face, int row) {
        int at = 9 * face + 3 * row;
        return facelets.charAt(at) + " " + facelets.charAt(at + 1) + " " + facelets.charAt(at + 2);
    }

    private static String where(SolveView solve, int turnsDone) {
        if (turnsDone == 0) {
            return "";
        }
        SolveView.Turn last = solve.turns().get(turnsDone - 1);
        String at = last.atUs() == null ? "" : " at " + Seconds.of(last.atUs());
        String stage = solve.stages().stream()
                .filter(one -> one.from() < turnsDone && turnsDone <= one.to())
                .map(one -> ", " + one.name())
                .collect(Collectors.joining());
        return ": " + last.core() + at + stage;
    }
}
