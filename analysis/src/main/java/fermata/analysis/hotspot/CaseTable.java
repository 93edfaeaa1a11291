package fermata.analysis.hotspot;

import fermata.analysis.record.StageName;
import fermata.analysis.rest.PracticedSolve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.apache.commons.statistics.descriptive.Median;

/**
 * The last-layer cases that were met, dearest first. Each solve counts once a stage; skipped stages and solves without
 * times are left out. Pure. Cost: linear in the turns, plus sorts.
 */
public final class CaseTable {
    private CaseTable() {}

    /** The table over solves of one series. */
    public static List<CaseRow> of(List<PracticedSolve> solves) {
        List<CaseRow> rows = new ArrayList<>();
        for (StageName stage : List.of(StageName.ORIENT, StageName.PERMUTE)) {
            Map<String, List<CaseRun>> runs = new LinkedHashMap<>();
            int timed = 0;
            for (PracticedSolve solve : solves) {
                timed += solve.record().isTimed() ? 1 : 0;
                CaseRun.of(solve).stream()
                        .filter(run -> run.stage() == stage)
                        .forEach(run -> runs.computeIfAbsent(run.caseName(), key -> new ArrayList<>())
                                .add(run));
            }
            List<CaseRun> all = runs.values().stream().flatMap(List::stream).toList();
            double usual = all.isEmpty() ? 0 : median(all, run -> run.recognitionMicros() + run.executionMicros());
            int of = timed;
            runs.forEach((name, met) -> rows.add(row(stage.written(), met, usual, of)));
        }
        rows.sort(Comparator.comparingDouble(CaseRow::costMicros).reversed());
        return rows;
    }

    private static CaseRow row(String stage, List<CaseRun> met, double usual, int solves) {
        double recognition = median(met, CaseRun::recognitionMicros);
        double execution = median(met, CaseRun::executionMicros);
        double excess = median(met, run -> run.recognitionMicros() + run.executionMicros()) - usual;
        String sequence = met.stream()
                .collect(Collectors.groupingBy(CaseRun::sequence, LinkedHashMap::new, Collectors.counting()))
                .entrySet()
                .stream()
                .max(Map.Entry.comparingByValue())
                .map(Map.Entry::getKey)
                .orElseThrow();
        return new CaseRow(
                stage,
                met.get(0).caseName(),
                met.size(),
                recognition,
                execution,
                median(met, CaseRun::turnsPerSecond),
                sequence,
                excess * met.size() / solves);
    }

    private static double median(List<CaseRun> runs, ToDoubleFunction<CaseRun> of) {
        return Median.withDefaults().evaluate(runs.stream().mapToDouble(of).toArray());
    }
}
