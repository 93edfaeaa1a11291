package fermata.daemon.web;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Written solves that show every sign of a score; the same words always give the same documents. */
final class ScoreSamples {
    private ScoreSamples() {}

    /** By one hand and layers, with tilts, wides, slices, halves, regrips, rests, fermatas, doubts and a usual band. */
    static Map<String, Object> everything() {
        WrittenScore score =
                new WrittenScore(41).heldBy("x2").turn("r' U'", 0.96).turn("F R2", 0.93);
        score.turn("z D'", 0.55).turn("z' U2 r", 0.72).stage("cross", null, "U");
        score.rest(840_000, true, "look-ahead", 520_000, "unexplained", 130_000)
                .turn("U' R U R'", 0.97)
                .regrip(0.83)
                .turn("U R U' R'", 0.97)
                .stage("pair1", "front and right", "BR");
        score.rest(420_000, false, "rotation", 230_000)
                .turn("z U' R' U R", 0.94)
                .turn("U' R' U R", 0.94)
                .turn("z' U", 0.58)
                .stage("pair2", "top and back", "BL");
        score.rest(1_180_000, true, "look-ahead", 730_000, "regrip", 210_000)
                .turn("y' R U2 R'", 0.95)
                .regrip(0.55)
                .turn("U R U' R'", 0.95)
                .stage("pair3", "top and right", "FL");
        score.rest(260_000, false)
                .turn("U' R U R' U2", 0.97)
                .turn("R R'", 0.97)
                .slip(2)
                .turn("R U' R'", 0.97)
                .stage("pair4", "skip", "FR");
        score.rest(520_000, false, "recognition", 300_000)
                .turn("F R U R' U' F'", 0.99)
                .stage("orient", "45", "");
        score.rest(690_000, false, "recognition", 410_000)
                .turn("M2 U M", 0.91)
                .regrip(0.72)
                .turn("U2 M' U M2", 0.91)
                .stage("permute", "Ua", "");
        Map<String, Object> shown =
                score.turn("U'", 0.99).stage("auf", null, "").shown("everything", "CFOP", "white");
        shown.put("usual", usual());
        shown.put("looking", looking(listOf(shown, "rests")));
        return shown;
    }

    private static Map<String, Object> usual() {
        Map<String, Object> usual = new LinkedHashMap<>();
        usual.put("nights", 9);
        usual.put("solves", 212);
        List<Map<String, Object>> stages = new ArrayList<>();
        long[][] ranges = {
            {1_500_000, 2_300_000},
            {1_800_000, 2_600_000},
            {1_700_000, 2_500_000},
            {1_700_000, 2_500_000},
            {1_600_000, 2_400_000},
            {1_600_000, 2_300_000},
            {2_400_000, 3_300_000}
        };
        String[] names = {"cross", "pair1", "pair2", "pair3", "pair4", "orient", "permute"};
        for (int at = 0; at < names.length; at++) {
            stages.add(Map.of("name", names[at], "low_us", ranges[at][0], "high_us", ranges[at][1]));
        }
        usual.put("stages", stages);
        usual.put("time_low_us", 14_100_000);
        usual.put("time_high_us", 17_600_000);
        return usual;
    }

    private static List<Map<String, Object>> looking(List<Map<String, Object>> rests) {
        List<Map<String, Object>> looking = new ArrayList<>();
        for (Map<String, Object> rest : rests) {
            if (Boolean.TRUE.equals(rest.get("fermata"))) {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("stage", looking.isEmpty() ? "pair1" : "pair3");
                one.put("colours", looking.isEmpty() ? List.of("blue", "red") : List.of("green", "orange"));
                one.put("finding", "fermata");
                one.put("p", 0.88);
                one.put("needed_us", 700_000);
                one.put("known_us", 310_000);
                one.put("rest_us", rest.get("length_us"));
                one.put("hidden", List.of());
                one.put("sooner", null);
                one.put("sentence", "Both pieces had been in sight for 0.31 s when the last pair was done.");
                looking.add(one);
            }
        }
        return looking;
    }

    /** Turns were lost twice, once so many that nobody knows how many; nothing is told of the hand. */
    static Map<String, Object> gapped() {
        WrittenScore score =
                new WrittenScore(7).withoutHand().turn("R' U' F R2 D' U2", 1).stage("cross", null, "D");
        score.rest(640_000, null)
                .turn("U' R U R' U R U' R'", 1)
                .lose(2, 700_000)
                .turn("L U L'", 1)
                .stage("pair1", null, "FR");
        score.turn("U B U' B'", 1).lose(null, 2_400_000).turn("R U2 R' U R", 1).rest(910_000, null);
        return score.turn("F R U R' U' F' U'", 1).stage("pair2", null, "FL").shown("gapped", "other", "yellow");
    }

    /** Two blocks, corners, and the last six edges by the slice, with two hands. */
    static Map<String, Object> blocks() {
        WrittenScore score = new WrittenScore(17)
                .heldBy("x2 y")
                .turn("F' r U' B R D L", 0.92)
                .stage("block1", null, "");
        score.rest(380_000, null)
                .turn("U R U' r U R'", 0.94)
                .turn("U2 r' U R U' r2", 0.8)
                .stage("block2", null, "");
        score.rest(470_000, null).turn("R U R' U R U2 R'", 0.98).stage("corners", null, "");
        score.rest(560_000, null).turn("M' U M U2 M' U' M2 U M2 U'", 0.95).turn("M U2 M' U2", 0.95);
        Map<String, Object> shown = score.stage("last_edges", null, "").shown("blocks", "Roux", null);
        shown.put("hand", "two");
        return shown;
    }

    /** Three hundred turns: twenty-five times a sequence and a rest. */
    static Map<String, Object> threeHundred() {
        WrittenScore score = new WrittenScore(300).heldBy("z2");
        for (int round = 0; round < 25; round++) {
            if (round > 0) {
                score.rest(500_000 + 37_000L * round, null);
            }
            score.turn("R U R' U' r U2 M'", 0.9);
            score.turn("U F' U", 0.7).stage(round == 0 ? "cross" : "pair" + (1 + (round - 1) % 4), null, "");
        }
        return score.shown("three-hundred", "other", "yellow");
    }

    @SuppressWarnings("unchecked")
    private static List<Map<String, Object>> listOf(Map<String, Object> shown, String name) {
        return (List<Map<String, Object>>) shown.get(name);
    }
}
