package fermata.analysis.rhythm;

import fermata.analysis.record.FermataJudgement;
import fermata.analysis.record.RestRecord;
import fermata.analysis.record.Segment;
import fermata.analysis.record.TurnRecord;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.LongStream;

/**
 * Intervals between the turns of one attempt. Those across a gap are no intervals: nobody knows what happened there.
 */
public final class Rests {
    private Rests() {}

    /** The intervals a rhythm is learned from, in microseconds, in order; none without a clock. */
    public static LongStream intervalsMicros(List<TurnRecord> turns, List<Segment.GapRecord> gaps) {
        Set<Integer> broken = beforeTurns(gaps);
        LongStream.Builder intervals = LongStream.builder();
        for (int index = 1; index < turns.size(); index++) {
            if (isKnown(turns, index, broken)) {
                intervals.add(interval(turns, index));
            }
        }
        return intervals.build();
    }

    /** The rests among the turns of one attempt, in order. */
    public static List<RestRecord> find(List<TurnRecord> turns, List<Segment.GapRecord> gaps, RhythmSnapshot rhythm) {
        Set<Integer> broken = beforeTurns(gaps);
        List<RestRecord> rests = new ArrayList<>();
        for (int index = 1; index < turns.size(); index++) {
            if (isKnown(turns, index, broken) && interval(turns, index) > rhythm.restFromMicros()) {
                rests.add(new RestRecord(
                        index - 1,
                        turns.get(index - 1).atMicros(),
                        interval(turns, index),
                        FermataJudgement.NOT_JUDGED));
            }
        }
        return rests;
    }

    private static Set<Integer> beforeTurns(List<Segment.GapRecord> gaps) {
        return gaps.stream().map(Segment.GapRecord::beforeTurn).collect(Collectors.toSet());
    }

    private static boolean isKnown(List<TurnRecord> turns, int index, Set<Integer> broken) {
        return turns.get(index).isTimed() && !broken.contains(index);
    }

    private static long interval(List<TurnRecord> turns, int index) {
        return Math.max(0, turns.get(index).atMicros() - turns.get(index - 1).atMicros());
    }
}
