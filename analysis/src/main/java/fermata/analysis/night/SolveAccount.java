package fermata.analysis.night;

import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.casebook.CaseRun;
import fermata.analysis.event.Event;
import fermata.analysis.hotspot.Loss;
import fermata.analysis.hotspot.Series;
import fermata.analysis.hotspot.SolveLosses;
import fermata.analysis.load.HandLoad;
import fermata.analysis.record.Outcome;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageName;
import fermata.analysis.record.StageRecord;
import fermata.analysis.rest.RestReading;
import java.util.List;
import java.util.Objects;

/**
 * What the sums over nights need of a solve and nothing more, so that a year of them can be read in passing.
 *
 * @param solveId {@link SolveRecord#id()}
 * @param series what it may be compared with
 * @param outcome how it ended
 * @param timeMicros turn time, or {@link Event#NO_TIME}
 * @param turns turns heard in it
 * @param regrips how many regrips are expected to have cost time
 * @param stages in order, those with times
 * @param losses one for each beat and cause worth a millisecond or more; {@link SolveLosses}
 * @param cases every case that it met
 */
public record SolveAccount(
        String solveId,
        Series series,
        Outcome outcome,
        long timeMicros,
        int turns,
        double regrips,
        List<StageTime> stages,
        List<Loss> losses,
        List<CaseRun> cases) {
    /**
     * How long a stage took, its waiting included.
     *
     * @param name which
     * @param micros at least 0
     */
    public record StageTime(StageName name, long micros) {
        public StageTime {
            Objects.requireNonNull(name, "name");
            if (micros < 0) {
                throw new IllegalArgumentException("stage " + name.written() + " of " + micros + " us");
            }
        }
    }

    public SolveAccount {
        Objects.requireNonNull(solveId, "solveId");
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(outcome, "outcome");
        stages = List.copyOf(stages);
        losses = List.copyOf(losses);
        cases = List.copyOf(cases);
        if (turns < 0 || !(regrips >= 0)) {
            throw new IllegalArgumentException(
                    "solve " + solveId + " with " + turns + " turns and " + regrips + " regrips");
        }
    }

    /** The account of a solve, from the reading of its rests. Cost: linear in its turns. */
    public static SolveAccount of(PracticedSolve solve, RestReading rests) {
        SolveRecord record = solve.record();
        List<StageTime> stages = record.stages().stream()
                .filter(StageRecord::isTimed)
                .map(stage -> new StageTime(stage.name(), stage.endMicros() - stage.startMicros()))
                .toList();
        return new SolveAccount(
                record.id(),
                Series.of(record),
                record.attempt().outcome(),
                record.timeMicros(),
                record.turns().size(),
                HandLoad.regrips(rests),
                stages,
                SolveLosses.of(solve, rests).losses(),
                CaseRun.of(solve));
    }

    /** Whether its turn time is known. */
    public boolean isTimed() {
        return timeMicros != Event.NO_TIME;
    }

    /** Whether it ended solved. */
    public boolean isSolved() {
        return outcome == Outcome.SOLVED;
    }
}
