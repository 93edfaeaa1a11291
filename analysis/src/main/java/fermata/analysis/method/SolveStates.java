package fermata.analysis.method;

import fermata.analysis.goal.CoreState;
import fermata.analysis.goal.PiecesHome;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;

/**
 * All states of a solve in the core frame, to be seen in any hold as {@link HeldStates}. Time t is after t turns.
 * Immutable. Cost: n + 1 states, three where a half turn led there.
 */
final class SolveStates {
    private final List<Turn> turns;
    private final PiecesHome home;
    private final List<List<CoreState>> states = new ArrayList<>();

    SolveStates(CubeState start, List<Turn> turns) {
        this.turns = List.copyOf(turns);
        this.home = new PiecesHome(start, turns);
        CubeState state = start;
        states.add(List.of(new CoreState(start)));
        for (Turn turn : turns) {
            CubeState before = state;
            state = before.apply(turn);
            states.add(passed(before, turn, state));
        }
    }

    private static List<CoreState> passed(CubeState before, Turn turn, CubeState reached) {
        if (turn.quarters() != 2) {
            return List.of(new CoreState(reached));
        }
        Turn quarter = Turn.of(turn.face(), 1);
        return List.of(
                new CoreState(reached), new CoreState(reached.apply(quarter)), new CoreState(before.apply(quarter)));
    }

    /** The state after so many turns and, if the last of them was a half turn, the two it may have passed through. */
    List<CoreState> at(int time) {
        return states.get(time);
    }

    /** Which pieces are home at each time. */
    PiecesHome home() {
        return home;
    }

    /** The turn that led to a time. */
    Turn turnTo(int time) {
        return turns.get(time - 1);
    }

    /** The time after the last turn. */
    int end() {
        return turns.size();
    }
}
