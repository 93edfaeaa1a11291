package fermata.analysis.casebook;

import fermata.analysis.hotspot.Series;
import fermata.analysis.record.StageName;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import org.apache.commons.statistics.descriptive.Median;

/**
 * The table of the cases that were met, kept solve after solve of one {@link Series}. A year takes some tens of
 * megabytes. Not thread-safe.
 *
 * <p>A case is dear by how much longer it takes than what is usual in the same stage: the third pair is compared with
 * third pairs, since fewer places are left to look at then.
 */
public final class CaseLedger {
    /** How often a case must be met before its cost is told. */
    public static final int NEEDED = 5;

    private static final String PAIR = "pair";

    private record Met(String solveId, CaseRun run) {}

    private final Map<String, List<Met>> met = new LinkedHashMap<>();
    private final Map<StageName, List<CaseRun>> stages = new EnumMap<>(StageName.class);
    private int solves;

    /** Adds the cases of a solve that has times; one without a case counts too. */
    public void add(String solveId, List<CaseRun> runs) {
        solves++;
        for (CaseRun run : runs) {
            met.computeIfAbsent(kind(run) + " " + run.caseName(), key -> new ArrayList<>())
                    .add(new Met(solveId, run));
            stages.computeIfAbsent(run.stage(), key -> new ArrayList<>()).add(run);
        }
    }

    /** How many solves were added. */
    public int solves() {
        return solves;
    }

    /** The rows, dearest first; then those met fewer than {@link #NEEDED} times, most first. Cost: sorts. */
    public List<CaseRow> rows() {
        Map<StageName, Double> usual = new EnumMap<>(StageName.class);
        stages.forEach((stage, runs) -> usual.put(stage, median(runs, CaseLedger::micros)));
        List<CaseRow> rows = new ArrayList<>();
        met.values().forEach(all -> rows.add(row(all, usual)));
        rows.sort(Comparator.comparing(CaseRow::isFew)
                .thenComparing(row -> row.isFew() ? -row.met() : 0)
                .thenComparing(Comparator.comparingDouble(CaseRow::costMicros).reversed()));
        return rows;
    }

    private CaseRow row(List<Met> all, Map<StageName, Double> usual) {
        List<CaseRun> runs = all.stream().map(Met::run).toList();
        Map<String, Integer> sequences = new LinkedHashMap<>();
        runs.forEach(run -> sequences.merge(run.sequence(), 1, Integer::sum));
        String sequence = sequences.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElseThrow();
        // By what the row tells, so that nobody sees a case under the usual and reads that it costs time.
        double recognition = median(runs, CaseRun::recognitionMicros);
        double execution = median(runs, CaseRun::executionMicros);
        double usualHere = median(runs, run -> usual.get(run.stage()));
        return new CaseRow(
                kind(runs.get(0)),
                runs.get(0).caseName(),
                runs.size(),
                recognition,
                execution,
                median(runs, CaseRun::turnsPerSecond),
                sequence,
                usualHere,
                (recognition + execution - usualHere) * runs.size() / solves,
                longest(all, usual));
    }

    private static List<CaseRow.Example> longest(List<Met> all, Map<StageName, Double> usual) {
        return all.stream()
                .sorted(Comparator.comparingDouble(one -> usual.get(one.run().stage()) - micros(one.run())))
                .limit(CaseRow.EXAMPLES)
                .map(one -> new CaseRow.Example(one.solveId(), one.run().atMicros()))
                .toList();
    }

    private static String kind(CaseRun run) {
        return switch (run.stage()) {
            case PAIR1, PAIR2, PAIR3, PAIR4 -> PAIR;
            default -> run.stage().written();
        };
    }

    private static double micros(CaseRun run) {
        return run.recognitionMicros() + run.executionMicros();
    }

    private static double median(List<CaseRun> runs, ToDoubleFunction<CaseRun> of) {
        return Median.withDefaults().evaluate(runs.stream().mapToDouble(of).toArray());
    }
}
