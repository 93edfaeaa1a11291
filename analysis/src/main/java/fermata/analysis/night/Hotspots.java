package fermata.analysis.night;

import fermata.analysis.record.Hotspot;
import fermata.analysis.record.RestRecord;
import fermata.analysis.record.Result;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageName;
import fermata.analysis.record.StageRecord;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Where a day's seconds were waited away, first version: the changes from one stage to the next, by the median rest.
 *
 * <p>A change where the rhythm ran on counts as a rest of 0. Under {@value #NEEDED} occurrences nothing is ranked.
 */
final class Hotspots {
    static final int NEEDED = 5;

    private record Change(StageName before, StageName after) {}

    private Hotspots() {}

    /** Longest median first, then those with too few, most first; ties by the order of the stages. */
    static List<Hotspot> of(List<SolveRecord> solves) {
        Map<Change, List<Long>> rests = new LinkedHashMap<>();
        for (SolveRecord solve : solves) {
            collect(solve, rests);
        }
        return rests.entrySet().stream()
                .map(entry -> hotspot(entry.getKey(), entry.getValue()))
                .sorted(Comparator.comparingLong(Hotspots::order)
                        .thenComparing(Comparator.comparingInt(Hotspot::count).reversed())
                        .thenComparing(Hotspot::before)
                        .thenComparing(Hotspot::after))
                .toList();
    }

    private static void collect(SolveRecord solve, Map<Change, List<Long>> rests) {
        List<StageRecord> done =
                solve.stages().stream().filter(stage -> !stage.span().isEmpty()).toList();
        for (int place = 1; place < done.size(); place++) {
            StageRecord after = done.get(place);
            rests.computeIfAbsent(new Change(done.get(place - 1).name(), after.name()), change -> new ArrayList<>())
                    .add(restBefore(solve, after.span().from()));
        }
    }

    private static long restBefore(SolveRecord solve, int turn) {
        return solve.rests().stream()
                .filter(rest -> rest.afterTurn() == turn - 1)
                .mapToLong(RestRecord::lengthMicros)
                .findFirst()
                .orElse(0);
    }

    private static Hotspot hotspot(Change change, List<Long> lengths) {
        Result typical =
                lengths.size() < NEEDED ? new Result.TooFew(lengths.size(), NEEDED) : new Result.Time(median(lengths));
        return new Hotspot(change.before(), change.after(), lengths.size(), typical);
    }

    private static long order(Hotspot hotspot) {
        return hotspot.typical() instanceof Result.Time time ? -time.micros() : Long.MAX_VALUE;
    }

    private static long median(List<Long> lengths) {
        List<Long> sorted = lengths.stream().sorted().toList();
        int middle = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(middle) : (sorted.get(middle - 1) + sorted.get(middle)) / 2;
    }
}
