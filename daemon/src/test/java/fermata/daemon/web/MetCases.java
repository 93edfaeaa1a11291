package fermata.daemon.web;

import fermata.analysis.cases.CasePictures;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Tables of cases as {@code cases --json} prints them, with true pictures and made-up times. */
final class MetCases {
    private static final String SUNE = "R U R' U R U2 R'";
    private static final String SHORT_F = "F R U R' U' F'";
    private static final String ALL_PERMUTATIONS = "Aa Ab E F Ga Gb Gc Gd H Ja Jb Na Nb Ra Rb T Ua Ub V Y Z";
    private static final int NEEDED = 5;

    private MetCases() {}

    /** No practice at all. */
    static Map<String, Object> none() {
        return document(0, List.of());
    }

    /** One solve, whose cases were all met once. */
    static Map<String, Object> ofOneSolve() {
        return document(1, List.of(orientation("27", SUNE, 1, 0), permutation("T", 1, 0), pair("URF-UB", "", 1, 0)));
    }

    /** An evening of so many that some are ranked, and some are too few to say. */
    static Map<String, Object> ofManySolves() {
        List<Map<String, Object>> cases = new ArrayList<>();
        cases.add(permutation("Ga", 7, 310_000));
        cases.add(pair("RFU-FL", "", 5, 188_000));
        cases.add(orientation("45", SHORT_F, 9, 121_000));
        cases.add(permutation("Ua", 6, 64_000));
        cases.add(pair("URF-UB", "", 12, 22_000));
        cases.add(permutation("H", 5, 2_000));
        cases.add(orientation("27", SUNE, 11, -41_000));
        cases.add(pair("FUR-UL", "", 8, -77_000));
        for (int name = 1; name <= 20; name++) {
            cases.add(orientation(String.valueOf(name), "", 1 + name % 4, 10_000));
        }
        for (String edge : List.of("UF", "FU", "RF", "BU", "UR", "RU", "LU", "BL")) {
            cases.add(pair("RFU-" + edge, "", 2, -3_000));
        }
        for (String name : List.of("T", "Jb", "Y", "V", "Na", "Z", "F", "E")) {
            cases.add(permutation(name, 3, 0));
        }
        return document(60, cases);
    }

    /** A year of them: every last-layer case, and pairs by the dozen, all ranked but the rarest. */
    static Map<String, Object> ofManyNights() {
        List<Map<String, Object>> cases = new ArrayList<>();
        for (int name = 1; name <= 57; name++) {
            cases.add(orientation(String.valueOf(name), "", 4 + name % 7, 9_000 * (30 - name)));
        }
        for (String name : ALL_PERMUTATIONS.split(" ")) {
            cases.add(permutation(name, 19, 4_000));
        }
        for (String corner : List.of("URF", "RFU", "FUR")) {
            for (String edge : "UF FU UR RU UB BU UL LU FL LF BL LB BR RB FR RF".split(" ")) {
                cases.add(pair(corner + "-" + edge, "", 31, -2_000));
            }
        }
        cases.sort(Comparator.comparing((Map<String, Object> row) -> (Boolean) row.get("few"))
                .thenComparing(row -> -(Integer) row.get("cost_us")));
        return document(400, cases);
    }

    private static Map<String, Object> document(int solves, List<Map<String, Object>> cases) {
        Map<String, Object> document = new LinkedHashMap<>();
        document.put("over", "all");
        document.put("from", solves == 0 ? null : "2026-11-02");
        document.put("to", solves == 0 ? null : "2026-11-24");
        document.put("series", solves == 0 ? null : Map.of("hand", "left", "method", "CFOP"));
        document.put("solves", solves);
        document.put("cases", cases);
        return document;
    }

    private static Map<String, Object> orientation(String name, String sequence, int met, int cost) {
        return row("orient", name, CasePictures.ofOrientation(name, sequence), sequence, met, cost);
    }

    private static Map<String, Object> permutation(String name, int met, int cost) {
        return row("permute", name, CasePictures.ofPermutation(name, ""), "R2 U R U R' U' R' U' R' U R'", met, cost);
    }

    private static Map<String, Object> pair(String name, String sequence, int met, int cost) {
        return row("pair", name, CasePictures.ofPair(name, sequence), "U R U' R'", met, cost);
    }

    private static Map<String, Object> row(
            String stage, String name, String picture, String sequence, int met, int cost) {
        Map<String, Object> row = new LinkedHashMap<>();
        row.put("stage", stage);
        row.put("case", name);
        row.put("picture", picture);
        row.put("met", met);
        row.put("few", met < NEEDED);
        row.put("recognition_us", 700_000 + cost);
        row.put("execution_us", 1_900_000 + 6 * cost);
        row.put("turns_per_second", 4.25);
        row.put("sequence", sequence.isEmpty() ? "R U R' U'" : sequence);
        row.put("usual_us", 2_600_000);
        row.put("cost_us", cost);
        row.put("examples", List.of());
        return row;
    }
}
