package fermata.daemon.live;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import java.util.List;

/**
 * A scramble: face turns that lead from solved to the state to be solved.
 *
 * @param turns first to last; at least one
 */
public record Scramble(List<Turn> turns) {
    public Scramble {
        turns = List.copyOf(turns);
        if (turns.isEmpty() || CubeState.SOLVED.apply(turns).isSolved()) {
            throw new IllegalArgumentException("scramble \"" + written(turns) + "\" scrambles nothing");
        }
    }

    /** Its words in WCA notation, separated by spaces. */
    public String words() {
        return written(turns);
    }

    private static String written(List<Turn> turns) {
        return Sequence.ofTurns(turns).toString();
    }
}
