package fermata.analysis.beat;

import fermata.analysis.record.TurnRecord;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Set;

/**
 * Finds doubles, slices and slips among the turns of a solve.
 *
 * <p>A slip is a run of turns that undoes itself within one stage: a turn taken back, or overshot and corrected. A
 * run in which a stage was finished is none, for something came of it. Cost: linear.
 */
final class TurnSpans {
    /** Both faces of a slice move at once; two turns one after the other take longer. Our own limit, no source. */
    static final long SLICE_WITHIN_MICROS = 80_000;

    private TurnSpans() {}

    static List<TurnSpan> find(List<TurnRecord> turns, Set<Integer> stageStarts) {
        List<TurnSpan> spans = new ArrayList<>(slips(turns, stageStarts));
        BitSet taken = new BitSet(turns.size());
        spans.forEach(slip -> taken.set(slip.turns().from(), slip.turns().to()));
        for (int turn = 1; turn < turns.size(); turn++) {
            if (!taken.get(turn) && !taken.get(turn - 1) && !stageStarts.contains(turn) && pair(turns, turn, spans)) {
                taken.set(turn);
            }
        }
        spans.sort(Comparator.comparingInt(span -> span.turns().from()));
        return spans;
    }

    /** Adds what two turns are together, if they are anything. */
    private static boolean pair(List<TurnRecord> turns, int second, List<TurnSpan> spans) {
        Turn one = turns.get(second - 1).core();
        Turn other = turns.get(second).core();
        Span both = new Span(second - 1, second + 1);
        if (one.equals(other) && one.quarters() != 2) {
            return spans.add(new TurnSpan(TurnSpan.Kind.DOUBLE, both));
        }
        if (one.face() == other.face().opposite()
                && (one.quarters() + other.quarters()) % 4 == 0
                && turns.get(second).isTimed()
                && turns.get(second - 1).isTimed()
                && turns.get(second).atMicros() - turns.get(second - 1).atMicros() <= SLICE_WITHIN_MICROS) {
            return spans.add(new TurnSpan(TurnSpan.Kind.SLICE, both));
        }
        return false;
    }

    private static List<TurnSpan> slips(List<TurnRecord> turns, Set<Integer> stageStarts) {
        List<TurnSpan> slips = new ArrayList<>();
        Deque<Integer> standing = new ArrayDeque<>();
        for (int turn = 0; turn < turns.size(); turn++) {
            if (stageStarts.contains(turn)) {
                standing.clear();
            }
            if (!standing.isEmpty()
                    && turns.get(standing.peek())
                            .core()
                            .equals(turns.get(turn).core().inverse())) {
                add(slips, standing.pop(), turn + 1);
            } else {
                standing.push(turn);
            }
        }
        return slips;
    }

    /** Runs that lie inside the new one, or end where it begins, are the same slip. */
    private static void add(List<TurnSpan> slips, int from, int to) {
        int first = from;
        while (!slips.isEmpty() && slips.get(slips.size() - 1).turns().to() >= first) {
            first = Math.min(first, slips.remove(slips.size() - 1).turns().from());
        }
        slips.add(new TurnSpan(TurnSpan.Kind.SLIP, new Span(first, to)));
    }
}
