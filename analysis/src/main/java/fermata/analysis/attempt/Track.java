package fermata.analysis.attempt;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.event.MarkKind;
import fermata.analysis.track.CubeTracker;
import fermata.decoder.cube.CubeState;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the log says the cube did. A <em>position</em> is a number of raw turns done, 0 to {@link #end()}; events
 * other than turns happen at a position. The tracked state is that of {@link CubeTracker}: what the turns add up to,
 * not what the cube physically is; where turns were lost it is made right, back to the loss, as soon as where the
 * turning stops tells.
 *
 * <p>Cost: one pass, a state or two a turn.
 */
class Track {
    /** Turns lost at a position, and from where on the state was known again; or {@link #NEVER}. */
    record Loss(int position, int turnsLost, int anchoredFrom) {
        static final int NEVER = Integer.MAX_VALUE;

        boolean isAnchoredBy(int end) {
            return anchoredFrom <= end;
        }
    }

    /** A scramble announced at a position. */
    record Announced(int position, String words) {}

    private final List<Event.Turned> turns;
    private final CubeTracker cube = new CubeTracker();
    private final List<CubeState> reached = new ArrayList<>();
    private final List<CubeState> left = new ArrayList<>();
    private final List<CubeState> references = new ArrayList<>();
    private final List<Loss> losses = new ArrayList<>();
    private final List<Announced> announced = new ArrayList<>();
    private final List<Integer> separators = new ArrayList<>();

    Track(CaptureLog log) {
        turns = log.turns();
        reached.add(cube.state());
        for (Event event : log.events()) {
            take(event);
        }
        cube.stopped().ifPresent(this::mend);
        left.add(cube.state());
        references.add(cube.reference());
    }

    private void take(Event event) {
        int position = reached.size() - 1;
        CubeState before = cube.state();
        Optional<CubeState> change = cube.take(event);
        change.ifPresent(this::mend);
        if (event instanceof Event.Turned) {
            left.add(change.map(right -> right.then(before)).orElse(before));
            references.add(cube.reference());
            reached.add(cube.state());
        } else if (event instanceof Event.Gap gap) {
            losses.add(new Loss(position, gap.turnsLost(), Loss.NEVER));
        } else if (event instanceof Event.Snapshot snapshot) {
            anchor(position, !snapshot.state().equals(before));
        } else if (event instanceof Event.Mark mark && mark.kind() != MarkKind.NOTE) {
            separators.add(position);
            if (mark.kind() == MarkKind.SCRAMBLE) {
                announced.add(new Announced(position, mark.text()));
            }
        }
    }

    /** Makes right what was tracked since turns were lost. */
    private void mend(CubeState change) {
        int position = reached.size() - 1;
        int since = losses.get(losses.size() - 1).position();
        for (int after = since; after < position; after++) {
            left.set(after, change.then(left.get(after)));
            reached.set(after + 1, change.then(reached.get(after + 1)));
        }
        for (int index = losses.size() - 1; index >= 0 && losses.get(index).anchoredFrom() == Loss.NEVER; index--) {
            Loss open = losses.get(index);
            losses.set(index, new Loss(open.position(), open.turnsLost(), position));
        }
    }

    /** A state that differs from the tracked one is explained by turns known to be lost, or else speaks of others. */
    private void anchor(int position, boolean jumps) {
        int last = losses.size() - 1;
        if (last >= 0 && losses.get(last).anchoredFrom() == Loss.NEVER) {
            Loss open = losses.get(last);
            losses.set(last, new Loss(open.position(), open.turnsLost(), position));
        } else if (jumps && position > 0) {
            losses.add(new Loss(position, Event.Gap.UNKNOWN_COUNT, position));
        }
    }

    /** The position after the last turn. */
    int end() {
        return turns.size();
    }

    List<Event.Turned> turns() {
        return turns;
    }

    /** The tracked state that the turns led to, before anything else was heard there. */
    CubeState reachedAt(int position) {
        return reached.get(position);
    }

    /** The tracked state from which the next turn left. */
    CubeState leftAt(int position) {
        return left.get(position);
    }

    CubeState referenceAt(int position) {
        return references.get(position);
    }

    /** The state from which the next turn left, as seen from the reference in force then. */
    CubeState relative(int position) {
        return leftAt(position).relativeTo(referenceAt(position));
    }

    /** The same as seen from the reference by which an attempt that ends at {@code end} is judged. */
    CubeState startOfAttempt(int position, int end) {
        return leftAt(position).relativeTo(turnedSolved(end) ? referenceAt(end - 1) : referenceAt(end));
    }

    /** Whether the turns led to the reference here. */
    boolean turnedSolved(int position) {
        return position > 0 && reachedAt(position).equals(referenceAt(position - 1));
    }

    /** Whether the cube was solved here, by its turns or by what was said afterwards at the same position. */
    boolean isSolvedAt(int position) {
        return turnedSolved(position) || leftAt(position).equals(referenceAt(position));
    }

    /**
     * Microseconds from the turn before a position to the one after it; 0 at the ends, without a clock, or backwards.
     */
    long pauseAt(int position) {
        if (position <= 0 || position >= end() || !turns.get(position).isTimed()) {
            return 0;
        }
        return Math.max(
                0, turns.get(position).atMicros() - turns.get(position - 1).atMicros());
    }

    /**
     * Entry i: how many times, from {@code from} on and before position {@code from + i}, another face began to turn.
     */
    int[] runsOfOneFace(int from, int to) {
        int[] runs = new int[to - from + 1];
        for (int raw = from; raw < to; raw++) {
            boolean same = raw > from
                    && turns.get(raw).turn().face() == turns.get(raw - 1).turn().face();
            runs[raw - from + 1] = runs[raw - from] + (same ? 0 : 1);
        }
        return runs;
    }

    boolean isTimed() {
        return !turns.isEmpty() && turns.get(0).isTimed();
    }

    List<Loss> losses() {
        return losses;
    }

    List<Announced> announced() {
        return announced;
    }

    /** Positions that no attempt crosses: scrambles announced, practice begun or ended. In order, perhaps doubled. */
    List<Integer> separators() {
        return separators;
    }
}
