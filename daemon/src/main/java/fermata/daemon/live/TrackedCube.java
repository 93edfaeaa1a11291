package fermata.daemon.live;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Legality;
import fermata.decoder.cube.Turn;
import fermata.decoder.stream.StreamEvent.StateReported;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What the cube is believed to be doing, from its turns and its own reports. Not thread-safe.
 *
 * <p>Like the analysis it begins by taking the cube for solved, and measures against a reference. After a loss of turns
 * it knows nothing until the cube reports its state, or somebody says that the cube is solved.
 */
final class TrackedCube {
    /** More turns than any report lies behind: a frame of the open layout holds six. */
    private static final int REMEMBERED = 32;

    private final Deque<Turn> latest = new ArrayDeque<>();
    private CubeState state = CubeState.SOLVED;
    private CubeState reference = CubeState.SOLVED;
    private boolean known = true;
    /** Whether the cube itself told where it was, and no turns were lost since. */
    private boolean told;
    /** Whether the reference was said before it was told, so that both are as far from the truth. */
    private boolean guessed;

    private CubeState awaited = CubeState.SOLVED;
    private int turnsUntilAwaited;

    /** One more turn; true if the state is then another than the turn explains. */
    boolean turned(Turn turn) {
        latest.addLast(turn);
        if (latest.size() > REMEMBERED) {
            latest.removeFirst();
        }
        state = state.apply(turn);
        return passed(1);
    }

    /** Turns were lost; true if their count leads to a state that was reported before. */
    boolean lost(OptionalInt count) {
        known = false;
        told = false;
        guessed = false;
        latest.clear();
        if (count.isEmpty()) {
            turnsUntilAwaited = 0;
            return false;
        }
        return passed(count.getAsInt());
    }

    private boolean passed(int turns) {
        if (turnsUntilAwaited == 0) {
            return false;
        }
        int until = turnsUntilAwaited - turns;
        turnsUntilAwaited = Math.max(0, until);
        // A loss that reaches beyond says nothing of the turns after the report.
        return until == 0 && adopt(awaited);
    }

    /** The cube's own idea of its state; true if it is news. */
    boolean reported(StateReported report) {
        if (report.state().legality() != Legality.LEGAL || report.turnsAhead().isEmpty()) {
            return false;
        }
        int ahead = report.turnsAhead().getAsInt();
        if (ahead > 0) {
            awaited = report.state();
            turnsUntilAwaited = ahead;
            return false;
        }
        if (-ahead > latest.size()) {
            return false;
        }
        List<Turn> turns = new ArrayList<>(latest);
        return adopt(report.state().apply(turns.subList(turns.size() + ahead, turns.size())));
    }

    private boolean adopt(CubeState reported) {
        boolean news = !known || !guessed && !reported.equals(state);
        if (guessed) {
            reference = reported.then(state.relativeTo(reference).inverse());
            guessed = false;
        }
        state = reported;
        known = true;
        told = true;
        return news;
    }

    /** Somebody says that the cube in the hand is solved: the tracked state is the reference from now on. */
    void solvedHere() {
        reference = state;
        guessed = !told;
        known = true;
    }

    /** The state that means solved. */
    CubeState reference() {
        return reference;
    }

    /** The state as seen from the reference; empty while it is not known. */
    Optional<CubeState> relative() {
        return known ? Optional.of(state.relativeTo(reference)) : Optional.empty();
    }
}
