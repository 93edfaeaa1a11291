package fermata.daemon.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What only some nights tell: trends, advice to the hand, places by cause, other series; all made up. */
final class FullerNight {
    private FullerNight() {}

    static void addTo(Map<String, Object> night) {
        night.put("other_series", List.of(othersMean()));
        night.put("trends", trends());
        night.put(
                "load",
                Map.of(
                        "turns", 812,
                        "regrips", 96.4,
                        "minutes", 31.2,
                        "longest_stretch_minutes", 18.5,
                        "advice", List.of("After 15 minutes without a pause the hand wants one: stretch it open.")));
        List<Map<String, Object>> spots = new ArrayList<>(RehearsedPractice.listOf(night, "hotspots"));
        if (!spots.isEmpty()) {
            spots.add(byCause(spots.get(0), "looking", null));
            spots.add(byCause(spots.get(0), "regrip", "pair2"));
        }
        night.put("hotspots", spots);
    }

    private static Map<String, Object> byCause(Map<String, Object> spot, String cause, String stage) {
        Map<String, Object> other = new LinkedHashMap<>(spot);
        other.put("before", stage);
        other.put("after", stage);
        other.put("cause", cause);
        other.put("sentence", "Of all causes " + cause + " costs most.");
        return other;
    }

    private static Map<String, Object> othersMean() {
        return named(
                "hand",
                "two",
                "method",
                "CFOP",
                "other_solver",
                false,
                "other_cube",
                false,
                "set_aside",
                false,
                "solves",
                3,
                "mean_us",
                14_210_000);
    }

    private static List<Map<String, Object>> trends() {
        return List.of(
                trend("time", "moves", -81_000, -120_000, -31_000, "The time falls by 0.08 s a day."),
                trend(
                        "rests",
                        "none_seen",
                        null,
                        -40_000,
                        66_000,
                        "Time lost to rests: no change can be seen yet (6 nights)."),
                trend("looking", "too_few", null, null, null, "Two nights are too few to tell how looking moves."));
    }

    private static Map<String, Object> trend(
            String figure, String says, Integer perDay, Integer low, Integer high, String sentence) {
        Map<String, Object> trend = named("figure", figure, "says", says, "nights", 6, "needed", 6);
        trend.putAll(named("per_day_us", perDay, "low_us", low, "high_us", high, "sentence", sentence));
        return trend;
    }

    private static Map<String, Object> named(Object... namesAndValues) {
        Map<String, Object> members = new LinkedHashMap<>();
        List<Object> all = Arrays.asList(namesAndValues);
        for (int index = 0; index < all.size(); index += 2) {
            members.put((String) all.get(index), all.get(index + 1));
        }
        return members;
    }
}
