package fermata.analysis.track;

import fermata.analysis.event.Event;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Puts what a stream tells into the order in which it happened on the cube: turns and gaps as they come, a state that
 * the cube reports exactly between the turns it contains and those it does not.
 *
 * <p>A state that comes <em>late</em> goes before the turns that it does not contain; those of a gap count as many as
 * were lost. One that comes <em>ahead</em> of its turns waits for them. A state that contains some turns of a gap
 * and not the others cuts the gap in two. Nobody knows where a state belongs that is separated from its place by a gap
 * of an unknown number of turns, by the beginning of the capture, or by more than {@value #MOST_TURNS_LATE} turns
 * heard: it is left out.
 *
 * <p>Cost: O(1) a turn or gap, for a late state O(turns that it does not contain). Not thread-safe.
 */
public final class StreamOrder {
    /** A state that lacks more turns than this has no cause that a restart of the cube would not explain better. */
    static final int MOST_TURNS_LATE = 64;

    private static final int MOST_REMEMBERED = 2 * MOST_TURNS_LATE;

    private final List<Event> events = new ArrayList<>();
    private final List<Waiting> waiting = new ArrayList<>();

    /** A state that the cube reported ahead of so many turns. */
    private record Waiting(Event.Snapshot state, int turnsAhead) {}

    /** A turn; true if a state stands behind it that had waited for it. */
    public boolean turned(Event.Turned turn) {
        events.add(turn);
        return placeWaiting(1);
    }

    /** Turns were lost; true if a state that had waited for some of them stands in or behind the gap. */
    public boolean lost(Event.Gap gap) {
        if (gap.turnsLost() == Event.Gap.UNKNOWN_COUNT) {
            waiting.clear();
            addGap(gap, gap.turnsLost());
            return false;
        }
        int passed = 0;
        waiting.sort(Comparator.comparingInt(Waiting::turnsAhead));
        for (Waiting state : waiting) {
            if (state.turnsAhead() < gap.turnsLost() && state.turnsAhead() > passed) {
                addGap(gap, state.turnsAhead() - passed);
                passed = state.turnsAhead();
            }
            if (state.turnsAhead() < gap.turnsLost()) {
                events.add(notBeforeTheLast(state.state()));
            }
        }
        addGap(gap, gap.turnsLost() - passed);
        boolean within = waiting.removeIf(state -> state.turnsAhead() < gap.turnsLost());
        return placeWaiting(gap.turnsLost()) || within;
    }

    /** A person's word comes where it is told. */
    void said(Event.Reference reference) {
        events.add(reference);
    }

    /**
     * The cube reports its state.
     *
     * @param turnsAhead how many turns it contains that have not come yet; below 0, how many that came it does not
     * @return whether it stands in its place now; else it waits, or is left out
     */
    public boolean reported(Event.Snapshot state, int turnsAhead) {
        if (turnsAhead > 0) {
            waiting.add(new Waiting(state, turnsAhead));
            return false;
        }
        int missing = -turnsAhead;
        int heard = 0;
        int index = events.size();
        while (missing > 0 && index > 0 && heard < MOST_TURNS_LATE) {
            index--;
            if (events.get(index) instanceof Event.Turned) {
                heard++;
                missing--;
            } else if (events.get(index) instanceof Event.Gap gap) {
                if (gap.turnsLost() == Event.Gap.UNKNOWN_COUNT) {
                    return false;
                }
                if (missing < gap.turnsLost()) {
                    cut(index, gap, state, missing);
                    return true;
                }
                missing -= gap.turnsLost();
            }
        }
        if (missing == 0) {
            events.add(index, notBeforeTheLast(state));
        }
        return missing == 0;
    }

    private void cut(int index, Event.Gap gap, Event.Snapshot state, int turnsAfter) {
        Event placed = notBeforeTheLast(state);
        events.set(index, new Event.Gap(gap.turnsLost() - turnsAfter, gap.origin(), gap.atMicros()));
        events.add(index + 1, placed);
        events.add(index + 2, new Event.Gap(turnsAfter, gap.origin(), gap.atMicros()));
    }

    private boolean placeWaiting(int turns) {
        boolean placed = false;
        for (int i = 0; i < waiting.size(); ) {
            Waiting next = waiting.remove(i);
            int ahead = next.turnsAhead() - turns;
            if (ahead == 0) {
                events.add(notBeforeTheLast(next.state()));
                placed = true;
            } else {
                waiting.add(i++, new Waiting(next.state(), ahead));
            }
        }
        return placed;
    }

    private void addGap(Event.Gap gap, int turnsLost) {
        events.add(new Event.Gap(turnsLost, gap.origin(), notBeforeTheLast(gap.atMicros())));
    }

    private Event.Snapshot notBeforeTheLast(Event.Snapshot state) {
        return new Event.Snapshot(state.state(), state.origin(), notBeforeTheLast(state.atMicros()));
    }

    /** A gap or state is told of by a frame that may have come before the turn in front of it was timed. */
    private long notBeforeTheLast(long micros) {
        return events.isEmpty()
                ? micros
                : Math.max(micros, events.get(events.size() - 1).atMicros());
    }

    /** What has come so far, in order, each gap and state at the time at which it was told. */
    List<Event> events() {
        return events;
    }

    /**
     * Lets go of the first events, once there are many before which no state that is still to come can stand.
     *
     * @return those events, perhaps none
     */
    List<Event> forgetWhatIsSettled() {
        if (events.size() < MOST_REMEMBERED) {
            return List.of();
        }
        int index = events.size();
        for (int heard = 0; heard < MOST_TURNS_LATE && index > 0; ) {
            index--;
            heard += events.get(index) instanceof Event.Turned ? 1 : 0;
        }
        List<Event> settled = List.copyOf(events.subList(0, index));
        events.subList(0, index).clear();
        return settled;
    }

    /**
     * What has come so far, in order. The times of gaps and states are taken back to the turn after them: a frame that
     * told of both came after that turn was made.
     */
    public List<Event> settled() {
        List<Event> settled = new ArrayList<>(events);
        long next = Long.MAX_VALUE;
        for (int index = settled.size() - 1; index >= 0; index--) {
            Event event = settled.get(index);
            if (event instanceof Event.Gap gap && gap.atMicros() > next) {
                settled.set(index, new Event.Gap(gap.turnsLost(), gap.origin(), next));
            } else if (event instanceof Event.Snapshot snapshot && snapshot.atMicros() > next) {
                settled.set(index, new Event.Snapshot(snapshot.state(), snapshot.origin(), next));
            }
            next = settled.get(index).atMicros();
        }
        return settled;
    }
}
