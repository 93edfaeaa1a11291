package fermata.daemon.web;

import fermata.analysis.rehearsal.AttemptTruth;
import fermata.analysis.rehearsal.CuberStyle;
import fermata.analysis.rehearsal.Evening;
import fermata.analysis.rehearsal.EveningPlan;
import fermata.analysis.rehearsal.VirtualCuber;
import fermata.daemon.json.Over;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;
import tools.jackson.databind.ObjectMapper;

/** Evenings of a made-up cuber as the pages read them, all from a seed, with awkward solves added by hand. */
final class RehearsedPractice implements PracticeReader {
    private static final ObjectMapper JSON = new ObjectMapper();

    private final TreeMap<String, List<Map<String, Object>>> solvesOfDay = new TreeMap<>();
    private final Map<String, Map<String, Object>> solves = new LinkedHashMap<>();
    private final Map<String, RehearsedSolve> truths = new LinkedHashMap<>();
    private boolean isFuller;
    private Map<String, Object> cases = MetCases.none();

    /** No night at all. */
    static RehearsedPractice empty() {
        return new RehearsedPractice();
    }

    /** Three nights of 7, 12 and 2 solves. */
    static RehearsedPractice threeNights() {
        RehearsedPractice practice = new RehearsedPractice();
        practice.rehearse("2026-11-22", 7, 2);
        practice.rehearse("2026-11-24", 12, 5);
        practice.rehearse("2026-11-25", 2, 3);
        return practice;
    }

    /** From now on nights tell their stages, trends, load and other series too. */
    RehearsedPractice fuller() {
        isFuller = true;
        return this;
    }

    /** With this table of cases. */
    RehearsedPractice meeting(Map<String, Object> table) {
        cases = table;
        return this;
    }

    RehearsedPractice rehearse(String day, int count, long seed) {
        EveningPlan plan = new EveningPlan(count, 1, 0.1, 0.1, 0);
        Evening evening = new VirtualCuber(CuberStyle.cook(), new SplittableRandom(seed)).evening(plan);
        for (AttemptTruth attempt : evening.attempts()) {
            RehearsedSolve solve = new RehearsedSolve(evening, attempt);
            Map<String, Object> shown = solve.shown(day, attempt.number());
            truths.put((String) shown.get("id"), solve);
            add(shown);
        }
        return this;
    }

    void add(Map<String, Object> shown) {
        solves.put((String) shown.get("id"), shown);
        solvesOfDay
                .computeIfAbsent((String) shown.get("day"), day -> new ArrayList<>())
                .add(shown);
    }

    /** A solve under another id on a day of its own, to be made awkward. */
    Map<String, Object> copy(String id, String newId) {
        Map<String, Object> copied = new LinkedHashMap<>(solves.get(id));
        copied.put("id", newId);
        copied.put("day", "2026-11-01");
        copied.put("number", solvesOfDay.getOrDefault("2026-11-01", List.of()).size() + 1);
        return copied;
    }

    Map<String, Object> shown(String id) {
        return solves.get(id);
    }

    RehearsedSolve truth(String id) {
        return truths.get(id);
    }

    @Override
    public String nightsJson() {
        List<Object> nights = new ArrayList<>();
        for (String day : solvesOfDay.descendingKeySet()) {
            nights.add(night(day));
        }
        return JSON.writeValueAsString(Map.of("nights", nights));
    }

    @Override
    public Optional<String> nightJson(LocalDate day, Over over) {
        return solvesOfDay.containsKey(day.toString())
                ? Optional.of(JSON.writeValueAsString(night(day.toString())))
                : Optional.empty();
    }

    @Override
    public String casesJson(Over over) {
        Map<String, Object> told = new LinkedHashMap<>(cases);
        told.put("over", over.written());
        return JSON.writeValueAsString(told);
    }

    @Override
    public String solvesJson() {
        return JSON.writeValueAsString(Map.of(
                "solves",
                solves.values().stream().map(RehearsedPractice::listed).toList()));
    }

    @Override
    public String solvesJson(LocalDate day) {
        List<Map<String, Object>> shown = solvesOfDay.getOrDefault(day.toString(), List.of());
        return JSON.writeValueAsString(
                Map.of("solves", shown.stream().map(RehearsedPractice::listed).toList()));
    }

    @Override
    public Optional<String> solveJson(String id) {
        return Optional.ofNullable(solves.get(id)).map(JSON::writeValueAsString);
    }

    private Map<String, Object> night(String day) {
        LongSummaryStatistics times = solvesOfDay.get(day).stream()
                .filter(shown -> shown.get("solved").equals(true) && shown.get("time_us") != null)
                .mapToLong(shown -> (Long) shown.get("time_us"))
                .summaryStatistics();
        Map<String, Object> night = new LinkedHashMap<>();
        night.put("day", day);
        night.put("solves", times.getCount());
        night.put(
                "abandoned",
                solvesOfDay.get(day).stream()
                        .filter(shown -> shown.get("outcome").equals("abandoned"))
                        .count());
        night.put("best_us", times.getCount() == 0 ? null : times.getMin());
        night.put("mean_us", times.getCount() == 0 ? null : Math.round(times.getAverage()));
        night.put("spread_us", null);
        night.put("average5_us", runs(day, 5));
        night.put("trimmed12_us", runs(day, 12));
        List<Map<String, Object>> spots = hotspots(day);
        night.put(
                "hotspots",
                spots.stream().filter(spot -> spot.containsKey("per_solve_us")).toList());
        night.put(
                "too_few",
                spots.stream().filter(spot -> !spot.containsKey("per_solve_us")).toList());
        if (isFuller) {
            FullerNight.addTo(night);
        }
        return night;
    }

    /** WCA 9f8 over every run of so many attempts: best and worst left out, one that was given up is the worst. */
    private Map<String, Object> runs(String day, int length) {
        List<Long> times = solvesOfDay.get(day).stream()
                .filter(shown -> shown.get("time_us") != null)
                .map(shown -> shown.get("solved").equals(true) ? (Long) shown.get("time_us") : Long.MAX_VALUE)
                .toList();
        List<Long> averages = new ArrayList<>();
        for (int from = 0; from + length <= times.size(); from++) {
            List<Long> run =
                    times.subList(from, from + length).stream().sorted().toList();
            List<Long> kept = run.subList(1, length - 1);
            boolean given = kept.contains(Long.MAX_VALUE);
            averages.add(
                    given
                            ? Long.MAX_VALUE
                            : kept.stream().mapToLong(Long::longValue).sum() / kept.size());
        }
        Map<String, Object> written = new LinkedHashMap<>();
        written.put("latest", averages.isEmpty() ? null : written(averages.get(averages.size() - 1)));
        written.put(
                "best",
                averages.isEmpty()
                        ? null
                        : written(averages.stream().sorted().findFirst().orElseThrow()));
        return written;
    }

    private static Object written(long average) {
        return average == Long.MAX_VALUE ? "DNF" : (Object) average;
    }

    private List<Map<String, Object>> hotspots(String day) {
        List<Map<String, Object>> spots = new ArrayList<>();
        String before = "cross";
        for (String after : List.of("pair1", "pair2", "pair3", "pair4", "orient", "permute")) {
            List<Long> rests = restsBefore(day, after);
            Map<String, Object> spot = new LinkedHashMap<>();
            spot.put("before", before);
            spot.put("after", after);
            spot.put("occurrences", rests.size());
            if (rests.size() >= 5) {
                long mean = rests.stream().mapToLong(Long::longValue).sum() / rests.size();
                spot.put("per_solve_us", mean);
                spot.put("low_us", mean * 3 / 4);
                spot.put("high_us", mean * 5 / 4);
                spot.put("examples", examples(day));
            }
            spots.add(spot);
            before = after;
        }
        return spots;
    }

    private List<Map<String, Object>> examples(String day) {
        return solvesOfDay.get(day).stream()
                .filter(shown -> shown.get("time_us") != null)
                .limit(2)
                .map(shown -> Map.of("id", shown.get("id"), "at_us", (Long) shown.get("time_us") / 2))
                .toList();
    }

    private List<Long> restsBefore(String day, String name) {
        List<Long> rests = new ArrayList<>();
        for (Map<String, Object> shown : solvesOfDay.get(day)) {
            for (Map<String, Object> stage : listOf(shown, "stages")) {
                if (stage.get("name").equals(name)) {
                    int before = (Integer) stage.get("from") - 1;
                    rests.add(listOf(shown, "rests").stream()
                            .filter(rest -> rest.get("after_turn").equals(before))
                            .mapToLong(rest -> (Long) rest.get("length_us"))
                            .sum());
                }
            }
        }
        rests.sort(null);
        return rests;
    }

    private static Map<String, Object> listed(Map<String, Object> shown) {
        Map<String, Object> listed = new LinkedHashMap<>();
        for (String name :
                List.of("id", "day", "number", "started_at", "hand", "solved", "outcome", "time_us", "method")) {
            listed.put(name, shown.get(name));
        }
        Map<String, Object> stages = new LinkedHashMap<>();
        if (!"none".equals(shown.get("clock"))) {
            for (Map<String, Object> stage : listOf(shown, "stages")) {
                stages.put((String) stage.get("name"), micros(stage, "end_us") - micros(stage, "start_us"));
            }
        }
        listed.put("turns", listOf(shown, "turns").size());
        listed.put("lost", listOf(shown, "gaps").size());
        listed.put(
                "rest_us",
                listOf(shown, "rests").stream()
                        .mapToLong(rest -> micros(rest, "length_us"))
                        .sum());
        listed.put("stages_us", stages);
        return listed;
    }

    private static long micros(Map<String, Object> object, String name) {
        return ((Number) object.get(name)).longValue();
    }

    @SuppressWarnings("unchecked")
    static List<Map<String, Object>> listOf(Map<String, Object> shown, String name) {
        return (List<Map<String, Object>>) shown.get(name);
    }
}
