package fermata.daemon.web;

import fermata.daemon.json.Over;
import fermata.daemon.json.PracticeReader;
import fermata.rehearsal.EveningPlan;
import fermata.rehearsal.VirtualCuber;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.Evening;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
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

    /** From now on nights tell of trends, of a hand that worked long, and of other series too. */
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
            nights.add(night(day, Over.NIGHT));
        }
        return JSON.writeValueAsString(Map.of("nights", nights));
    }

    @Override
    public Optional<String> nightJson(LocalDate day, Over over) {
        return solvesOfDay.containsKey(day.toString())
                ? Optional.of(JSON.writeValueAsString(night(day.toString(), over)))
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

    private Map<String, Object> night(String day, Over over) {
        LocalDate to = LocalDate.parse(day);
        LocalDate from = over == Over.NIGHT ? to : over == Over.WEEK ? to.minusDays(6) : LocalDate.MIN;
        Map<String, List<Map<String, Object>>> nights = new TreeMap<>(solvesOfDay);
        nights.keySet()
                .removeIf(one -> LocalDate.parse(one).isBefore(from)
                        || LocalDate.parse(one).isAfter(to));
        Map<String, Object> night = RehearsedNight.told(day, over, nights);
        if (isFuller) {
            FullerNight.addTo(night);
        }
        return night;
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
