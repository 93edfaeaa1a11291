package fermata.daemon.practice;

import fermata.analysis.night.SolveAccount;
import fermata.analysis.record.StageName;
import fermata.daemon.json.SolveView;
import fermata.daemon.store.AccountRow;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What is usual for a solver: the middle half of the solves before, so that one solve can be held beside them. The
 * quartiles are interpolated between the sorted values (type 7 of Hyndman, Fan 1996). Stateless.
 */
final class UsualTimes {
    /** So many solves back: what was usual a year ago is not. */
    static final int MOST_SOLVES = 100;
    /** Fewer have no middle half. */
    static final int FEWEST_SOLVES = 5;

    private UsualTimes() {}

    /**
     * The middle half of the times and of each stage's.
     *
     * @param earlier solved and timed solves of one series; empty if there are too few
     */
    static Optional<SolveView.Usual> of(List<AccountRow> earlier) {
        if (earlier.size() < FEWEST_SOLVES) {
            return Optional.empty();
        }
        AccountRows reader = new AccountRows();
        List<Long> times = new ArrayList<>();
        Map<StageName, List<Long>> stages = new LinkedHashMap<>();
        for (AccountRow row : earlier) {
            SolveAccount account = reader.read(row);
            times.add(account.timeMicros());
            account.stages()
                    .forEach(stage -> stages.computeIfAbsent(stage.name(), name -> new ArrayList<>())
                            .add(stage.micros()));
        }
        Set<LocalDate> nights = earlier.stream().map(AccountRow::day).collect(Collectors.toSet());
        return Optional.of(new SolveView.Usual(
                nights.size(),
                earlier.size(),
                stages.entrySet().stream()
                        .filter(stage -> stage.getValue().size() >= FEWEST_SOLVES)
                        .map(stage -> new SolveView.UsualStage(
                                stage.getKey().written(), quartile(stage.getValue(), 1), quartile(stage.getValue(), 3)))
                        .toList(),
                quartile(times, 1),
                quartile(times, 3)));
    }

    private static long quartile(List<Long> values, int which) {
        List<Long> sorted = values.stream().sorted().toList();
        double place = (sorted.size() - 1) * which / 4.0;
        int below = (int) place;
        int above = Math.min(below + 1, sorted.size() - 1);
        return Math.round(sorted.get(below) + (place - below) * (sorted.get(above) - sorted.get(below)));
    }
}
