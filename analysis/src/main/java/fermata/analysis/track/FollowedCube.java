package fermata.analysis.track;

import fermata.analysis.event.Event;
import fermata.analysis.event.Origin;
import fermata.decoder.cube.CubeState;
import java.util.Optional;

/**
 * The state of a cube now, from what its stream tells as it comes. After everything that is told it says what a
 * {@link CubeTracker} says that reads the log of it: where a state comes late, what came since is gone through again.
 *
 * <p>Somebody may say that the cube in the hand is solved when it had not told where it was, so that the tracked state
 * and the reference are equally far from the truth. When the cube then tells, the word is kept and the reference moved.
 * Each time the reference is another than before it belongs in the log.
 *
 * <p>Cost: a state or two an event; where a state is reported, some hundred. Memory: the last hundred turns or so. Not
 * thread-safe.
 */
public final class FollowedCube {
    private final StreamOrder order = new StreamOrder();
    /** Knows what came before all that {@link #order} remembers. */
    private final CubeTracker past = new CubeTracker();

    private CubeTracker now = new CubeTracker();
    private boolean rested;
    /** Whether the reference was said before the cube told where it was, with no turns lost since. */
    private boolean guessed;

    /** One more turn; true if the state is then another than the turn explains. */
    public boolean turned(Event.Turned turn) {
        rested = false;
        now.take(turn);
        boolean jumped = order.turned(turn) && readAgain(turn);
        order.forgetWhatIsSettled().forEach(past::take);
        return jumped;
    }

    /** Turns were lost; true if the state is known all the same, by what was reported before. */
    public boolean lost(Event.Gap gap) {
        guessed = false;
        now.take(gap);
        return order.lost(gap) && readAgain(gap);
    }

    /**
     * The cube reports its state; true if it is news.
     *
     * @param turnsAhead how many turns it contains that have not come yet; below 0, how many that came it does not
     */
    public boolean reported(Event.Snapshot state, int turnsAhead) {
        return order.reported(state, turnsAhead) && readAgain(state);
    }

    /** The last turn is {@link CubeTracker#PAUSE_MICROS} ago; true if that tells what was lost. */
    public boolean rested() {
        rested = true;
        return now.stopped().isPresent();
    }

    /** Somebody says that the cube in the hand is solved: what it is now is the reference from now on. */
    public void solvedHere(Origin origin, long atMicros) {
        guessed = !now.isTold();
        say(new Event.Reference(now.state(), origin, atMicros));
    }

    private void say(Event.Reference reference) {
        order.said(reference);
        now.take(reference);
    }

    /** A state stands somewhere before the end. */
    private boolean readAgain(Event because) {
        Optional<CubeState> before = now.relative();
        now = past.copy();
        order.events().forEach(now::take);
        if (rested) {
            now.stopped();
        }
        if (guessed && before.isPresent()) {
            keepTheWord(before.get(), because);
        }
        return !before.equals(now.relative());
    }

    private void keepTheWord(CubeState relative, Event because) {
        CubeState kept = now.state().then(relative.inverse());
        if (!kept.equals(now.reference())) {
            say(new Event.Reference(kept, because.origin(), because.atMicros()));
        }
        guessed = !now.isTold();
    }

    /** The state that means solved. */
    public CubeState reference() {
        return now.reference();
    }

    /** The state as seen from the reference; empty while it is not known. */
    public Optional<CubeState> relative() {
        return now.relative();
    }
}
