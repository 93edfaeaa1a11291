package fermata.analysis.track;

import fermata.analysis.event.Event;
import fermata.analysis.event.MarkKind;
import fermata.decoder.cube.CubeState;
import java.util.Optional;

/**
 * The state of a cube, event by event, in the order of a log. It begins solved, and that means solved.
 *
 * <ul>
 *   <li>A <em>turn</em> is added to the tracked state, whether or not the state is known.
 *   <li>At a <em>gap</em> the state becomes unknown, however many turns it counts; the turns heard afterwards are added
 *       up as if none had been lost. The count says what {@link LostTurns} may try: one or two turns, or an unknown
 *       number, which may be none. After a second gap it tries no turns any more.
 *   <li>A <em>snapshot</em> is the state, exactly here; it is known from here on, whatever was before. It does not
 *       touch the reference. Where a late state belongs is for {@link StreamOrder} to say.
 *   <li>A <em>reference</em> is the tracked state that means solved from here on. The tracked state stays, and is known
 *       as seen from it.
 *   <li>Where the turning <em>stops</em> after a loss, {@link LostTurns} may tell that the cube is solved there. It
 *       stops before a turn that comes {@value #PAUSE_MICROS} microseconds or more after the last one, at a mark other
 *       than a note, and where {@link #stopped()} is called.
 *   <li>Everything else says nothing of the state.
 * </ul>
 *
 * <p>Cost: a state or two an event. Not thread-safe.
 */
public final class CubeTracker {
    /** An interval of this length is a pause. */
    public static final long PAUSE_MICROS = 1_000_000;

    private CubeState state = CubeState.SOLVED;
    private CubeState reference = CubeState.SOLVED;
    /** Since when and from where nobody knows the state; empty while it is known. */
    private Optional<LostTurns> lost = Optional.empty();

    private boolean told;
    private long lastTurnMicros = Event.NO_TIME;

    /** One that knows the same and goes its own way from here. */
    public CubeTracker copy() {
        CubeTracker copy = new CubeTracker();
        copy.state = state;
        copy.reference = reference;
        copy.lost = lost.map(LostTurns::copy);
        copy.told = told;
        copy.lastTurnMicros = lastTurnMicros;
        return copy;
    }

    /**
     * The next event.
     *
     * @return if the turning had stopped before it and that told what was lost: the change that, put before all states
     *     since the loss, makes them right, as {@link #stopped()} gives it
     */
    public Optional<CubeState> take(Event event) {
        return event.visit(new Taking());
    }

    /** What the next event changes. */
    private final class Taking implements Event.CubeVisitor<Optional<CubeState>> {
        @Override
        public Optional<CubeState> turned(Event.Turned turned) {
            return turn(turned);
        }

        @Override
        public Optional<CubeState> gap(Event.Gap gap) {
            lost = Optional.of(lost.isEmpty() ? LostTurns.from(state, gap.turnsLost()) : LostTurns.fromUnknown());
            told = false;
            return Optional.empty();
        }

        @Override
        public Optional<CubeState> snapshot(Event.Snapshot snapshot) {
            state = snapshot.state();
            lost = Optional.empty();
            told = true;
            return Optional.empty();
        }

        @Override
        public Optional<CubeState> reference(Event.Reference moved) {
            reference = moved.state();
            lost = Optional.empty();
            return Optional.empty();
        }

        @Override
        public Optional<CubeState> mark(Event.Mark mark) {
            return mark.kind() == MarkKind.NOTE ? Optional.empty() : stopped();
        }

        @Override
        public Optional<CubeState> unchanged() {
            return Optional.empty();
        }
    }

    private Optional<CubeState> turn(Event.Turned turned) {
        boolean paused = turned.isTimed()
                && lastTurnMicros != Event.NO_TIME
                && turned.atMicros() - lastTurnMicros >= PAUSE_MICROS;
        Optional<CubeState> change = paused ? stopped() : Optional.empty();
        lastTurnMicros = turned.atMicros();
        lost.ifPresent(since -> since.hear(turned.turn()));
        state = state.apply(turned.turn());
        return change;
    }

    /**
     * The turning stops here: perhaps that tells what was lost.
     *
     * @return the change that, put before all states since the loss, makes them right; empty if none was lost, or still
     *     nobody knows
     */
    public Optional<CubeState> stopped() {
        Optional<CubeState> change = lost.flatMap(since -> since.stop(state, reference));
        change.ifPresent(right -> {
            state = right.then(state);
            lost = Optional.empty();
        });
        return change;
    }

    /** What the turns add up to since the state was last known; not what the cube is, while it is unknown. */
    public CubeState state() {
        return state;
    }

    /** The state that means solved. */
    public CubeState reference() {
        return reference;
    }

    /** Whether the state is known, as seen from the reference. */
    public boolean isKnown() {
        return lost.isEmpty();
    }

    /** Whether the cube itself said where it was, and no turns were lost since. */
    public boolean isTold() {
        return told;
    }

    /** The state as seen from the reference; empty while it is unknown. */
    public Optional<CubeState> relative() {
        return isKnown() ? Optional.of(state.relativeTo(reference)) : Optional.empty();
    }
}
