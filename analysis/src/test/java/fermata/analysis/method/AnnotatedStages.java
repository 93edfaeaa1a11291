package fermata.analysis.method;

import fermata.analysis.record.StageName;
import java.util.EnumMap;
import java.util.Map;

/**
 * What the lines of a reconstruction claim about stage ends: for each stage named, after how many turns it
 * ends: more than the first number, at most the second.
 *
 * <p>Read as written: "xcross" claims cross and pair 1, "xxcross" pair 2 as well; where pairs are numbered from 1
 * after an xcross they are counted on; OLL claims orientation, ZBLL and LL both halves of the last layer, PLL
 * permutation, OLS the fourth pair and, unless a ZBLL line follows, orientation. A last OLL or pair line after which
 * nothing else is labelled claims what is left. A line "other" without a finer label claims nothing.
 */
final class AnnotatedStages {
    private final Map<StageName, int[]> windows = new EnumMap<>(StageName.class);
    private final Reconstruction solve;
    private int crossPairs;

    private AnnotatedStages(Reconstruction solve) {
        this.solve = solve;
    }

    static Map<StageName, int[]> of(Reconstruction solve) {
        AnnotatedStages stages = new AnnotatedStages(solve);
        solve.lines().forEach(stages::take);
        stages.claimTheRest();
        return stages.windows;
    }

    private void take(Reconstruction.Line line) {
        int[] window = {line.from(), line.to()};
        switch (line.stage()) {
            case "cross" -> cross(line.sub(), window);
            case "OLL" -> orient(line.sub(), window);
            case "PLL" -> claim(StageName.PERMUTE, window);
            case "EO", "inspection", "AUF" -> {}
            case "other" -> lastLayer(line.sub(), window);
            default -> pair(line.stage(), window);
        }
    }

    private void cross(String sub, int[] window) {
        claim(StageName.CROSS, window);
        crossPairs = sub.equals("xcross") ? 1 : sub.equals("xxcross") ? 2 : 0;
        for (int pair = 1; pair <= crossPairs; pair++) {
            claim(StageName.pair(pair), window);
        }
    }

    private void pair(String stage, int[] window) {
        int written = Integer.parseInt(stage.substring("pair ".length()));
        boolean countedAnew =
                solve.lines().stream().anyMatch(line -> line.stage().equals("pair 1")) && crossPairs > 0;
        claim(StageName.pair(countedAnew ? written + crossPairs : written), window);
    }

    private void orient(String sub, int[] window) {
        boolean more = solve.lines().stream().anyMatch(line -> line.sub().equals("ZBLL"));
        if (sub.equals("OLS")) {
            claim(StageName.PAIR4, window);
        }
        if (!more) {
            claim(StageName.ORIENT, window);
        }
    }

    private void lastLayer(String sub, int[] window) {
        if (sub.equals("ZBLL") || sub.equals("LL")) {
            claim(StageName.ORIENT, window);
            claim(StageName.PERMUTE, window);
        }
    }

    private void claim(StageName stage, int[] window) {
        windows.put(stage, window);
    }

    private void claimTheRest() {
        Reconstruction.Line last = solve.lines().get(solve.lines().size() - 1);
        if (last.stage().equals("AUF")) {
            last = solve.lines().get(solve.lines().size() - 2);
        }
        int[] window = {last.from(), solve.turns().size()};
        windows.putIfAbsent(StageName.ORIENT, window);
        windows.putIfAbsent(StageName.PERMUTE, window);
    }
}
