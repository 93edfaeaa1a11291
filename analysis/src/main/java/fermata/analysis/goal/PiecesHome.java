package fermata.analysis.goal;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;

/**
 * Which pieces are home at each time of a solve, as bits of {@link CubeState#home()}. After a half turn there are three
 * answers: as it is, and halfway through, which may lie on either side, since a half turn does not say which way it
 * went. Immutable. Cost: 20 table steps a turn, three times that for a half turn.
 */
public final class PiecesHome {
    private final List<Turn> turns;
    private final List<int[]> home = new ArrayList<>();

    /**
     * Looks through a solve.
     *
     * @param start the state before the first turn
     * @param turns core frame
     */
    public PiecesHome(CubeState start, List<Turn> turns) {
        this.turns = List.copyOf(turns);
        CubeState state = start;
        home.add(new int[] {state.home()});
        for (Turn turn : turns) {
            CubeState before = state;
            state = before.apply(turn);
            Turn quarter = Turn.of(turn.face(), 1);
            home.add(
                    turn.quarters() == 2
                            ? new int[] {state.home(), state.homeAfter(quarter), before.homeAfter(quarter)}
                            : new int[] {state.home()});
        }
    }

    /** The bit of a corner in its own place, the right way round. */
    public static int bit(Corner corner) {
        return 1 << corner.ordinal();
    }

    /** The bit of an edge in its own place, the right way round. */
    public static int bit(Edge edge) {
        return 1 << Corner.values().length + edge.ordinal();
    }

    int[] at(int time) {
        return home.get(time);
    }

    /** The time after the last turn. */
    int end() {
        return turns.size();
    }

    /** The turn that led to a time. */
    Turn turnTo(int time) {
        return turns.get(time - 1);
    }
}
