package fermata.daemon.web;

import fermata.daemon.json.Over;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Map;
import java.util.stream.Stream;

/** Sums up made-up solves in the shape of {@code night --json} (docs/formats.md). Its intervals are made up. */
final class RehearsedNight {
    private static final List<String> STAGES =
            List.of("cross", "pair1", "pair2", "pair3", "pair4", "orient", "permute", "auf");
    private static final int NEEDED = 5;

    private final List<Map<String, Object>> solves;

    private RehearsedNight(List<Map<String, Object>> solves) {
        this.solves = solves;
    }

    /** What the nights from the first to the last of these days tell together. */
    static Map<String, Object> told(String day, Over over, Map<String, List<Map<String, Object>>> nights) {
        List<String> days = nights.keySet().stream().sorted().toList();
        Map<String, Object> night = new LinkedHashMap<>();
        night.put("day", day);
        night.put("over", over.written());
        night.put("from", over == Over.NIGHT ? day : days.get(0));
        night.put("to", day);
        night.put("nights", days.size());
        night.put("series", Map.of("hand", "left", "method", "CFOP"));
        new RehearsedNight(
                        days.stream().flatMap(one -> nights.get(one).stream()).toList())
                .addTo(night);
        return night;
    }

    private void addTo(Map<String, Object> night) {
        LongSummaryStatistics times =
                timed().mapToLong(one -> time(one) / 10_000 * 10_000).summaryStatistics();
        boolean hasTimes = times.getCount() > 0;
        night.put("solves", times.getCount());
        night.put(
                "abandoned",
                solves.stream()
                        .filter(one -> one.get("outcome").equals("abandoned"))
                        .count());
        night.put("best_us", hasTimes ? times.getMin() : null);
        night.put("mean_us", hasTimes ? Math.round(times.getAverage()) : null);
        night.put("spread_us", times.getCount() < 2 ? null : spread(times.getAverage()));
        night.put("average5_us", runs(5));
        night.put("trimmed12_us", runs(12));
        night.put("stages", stages());
        List<Map<String, Object>> spots = spots();
        night.put("hotspots", spots.stream().filter(RehearsedNight::isRanked).toList());
        night.put("too_few", spots.stream().filter(spot -> !isRanked(spot)).toList());
        night.put("trends", List.of());
        long turns =
                solves.stream().mapToLong(one -> listOf(one, "turns").size()).sum();
        night.put(
                "load",
                Map.of(
                        "turns",
                        turns,
                        "regrips",
                        turns / 12,
                        "minutes",
                        times.getSum() / 60e6,
                        "longest_stretch_minutes",
                        solves.size(),
                        "advice",
                        List.of()));
        night.put("other_series", List.of());
        night.put("derived", Map.of("code", "analysis-0", "snapshot", "0123456789ab", "began_from", "ba9876543210"));
    }

    private Stream<Map<String, Object>> timed() {
        return solves.stream().filter(one -> one.get("solved").equals(true) && one.get("time_us") != null);
    }

    private static long time(Map<String, Object> solve) {
        return (Long) solve.get("time_us");
    }

    private long spread(double mean) {
        double squares =
                timed().mapToDouble(one -> Math.pow(time(one) - mean, 2)).sum();
        return Math.round(Math.sqrt(squares / (timed().count() - 1)));
    }

    /** WCA 9f8 over every run of so many attempts: best and worst left out, one that was given up is the worst. */
    private Map<String, Object> runs(int length) {
        List<Long> times = solves.stream()
                .filter(one -> one.get("time_us") != null)
                .map(one -> one.get("solved").equals(true) ? time(one) : Long.MAX_VALUE)
                .toList();
        List<Long> averages = new ArrayList<>();
        for (int from = 0; from + length <= times.size(); from++) {
            List<Long> kept = times.subList(from, from + length).stream()
                    .sorted()
                    .toList()
                    .subList(1, length - 1);
            averages.add(
                    kept.contains(Long.MAX_VALUE)
                            ? Long.MAX_VALUE
                            : kept.stream().mapToLong(Long::longValue).sum() / kept.size());
        }
        Map<String, Object> written = new LinkedHashMap<>();
        written.put("latest", averages.isEmpty() ? null : written(averages.get(averages.size() - 1)));
        written.put(
                "best",
                averages.stream()
                        .sorted()
                        .findFirst()
                        .map(RehearsedNight::written)
                        .orElse(null));
        return written;
    }

    private static Object written(long average) {
        return average == Long.MAX_VALUE ? "DNF" : (Object) average;
    }

    private List<Map<String, Object>> stages() {
        Map<String, List<Long>> lengths = new LinkedHashMap<>();
        for (String name : STAGES) {
            List<Long> all = timed().flatMap(one -> listOf(one, "stages").stream())
                    .filter(stage -> stage.get("name").equals(name))
                    .map(stage -> micros(stage, "end_us") - micros(stage, "start_us"))
                    .sorted()
                    .toList();
            if (!all.isEmpty()) {
                lengths.put(name, all);
            }
        }
        double whole = lengths.values().stream()
                .flatMap(List::stream)
                .mapToLong(Long::longValue)
                .sum();
        List<Map<String, Object>> stages = new ArrayList<>();
        lengths.forEach((name, all) -> stages.add(Map.of(
                "name",
                name,
                "median_us",
                all.get(all.size() / 2),
                "share",
                all.stream().mapToLong(Long::longValue).sum() / whole)));
        return stages;
    }

    private List<Map<String, Object>> spots() {
        List<Map<String, Object>> spots = new ArrayList<>();
        for (int at = 1; at + 1 < STAGES.size(); at++) {
            spots.add(spot(STAGES.get(at - 1), STAGES.get(at)));
        }
        return spots;
    }

    private Map<String, Object> spot(String before, String after) {
        List<Long> rests = restsBefore(after);
        Map<String, Object> spot = new LinkedHashMap<>();
        spot.put("before", before);
        spot.put("after", after);
        spot.put("case", null);
        spot.put("cause", null);
        spot.put("hold", null);
        spot.put("occurrences", rests.size());
        if (rests.size() < NEEDED) {
            spot.put("sentence", "Before " + after + ": too few to say (" + rests.size() + ").");
            return spot;
        }
        long mean = rests.stream().mapToLong(Long::longValue).sum() / rests.size();
        spot.put("per_solve_us", mean);
        spot.put("low_us", mean * 3 / 4);
        spot.put("high_us", mean * 5 / 4);
        spot.put("sentence", "The pause before " + after + " costs most.");
        spot.put("examples", examples());
        return spot;
    }

    private static boolean isRanked(Map<String, Object> spot) {
        return spot.containsKey("per_solve_us");
    }

    private List<Map<String, Object>> examples() {
        return timed().limit(2)
                .map(one -> Map.of("id", one.get("id"), "at_us", time(one) / 2))
                .toList();
    }

    private List<Long> restsBefore(String name) {
        List<Long> rests = new ArrayList<>();
        for (Map<String, Object> solve : solves) {
            for (Map<String, Object> stage : listOf(solve, "stages")) {
                if (stage.get("name").equals(name)) {
                    int before = (Integer) stage.get("from") - 1;
                    rests.add(listOf(solve, "rests").stream()
                            .filter(rest -> rest.get("after_turn").equals(before))
                            .mapToLong(rest -> micros(rest, "length_us"))
                            .sum());
                }
            }
        }
        return rests;
    }

    private static long micros(Map<String, Object> object, String name) {
        return ((Number) object.get(name)).longValue();
    }

    private static List<Map<String, Object>> listOf(Map<String, Object> shown, String name) {
        return RehearsedPractice.listOf(shown, name);
    }
}
