package fermata.decoder.stream;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * The turns between two states, where only one shortest answer exists. Turns of one axis count as one answer in
 * whatever order, the face that is declared first coming first. Stateless.
 */
final class StateDifference {
    /** Beyond this, most pairs of states have several answers. */
    static final int MAX_TURNS = 4;

    private StateDifference() {}

    /**
     * The turns from one state to another; none if they are equal, empty if there are several shortest answers or
     * none of up to {@value #MAX_TURNS} turns. Cost: microseconds for one turn or two, 5 ms for four.
     */
    static Optional<List<Turn>> between(CubeState from, CubeState to) {
        CubeState difference = to.relativeTo(from);
        for (int length = 0; length <= MAX_TURNS; length++) {
            List<List<Turn>> found = new ArrayList<>();
            search(CubeState.SOLVED, difference, length, new ArrayDeque<>(), found);
            if (!found.isEmpty()) {
                return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
            }
        }
        return Optional.empty();
    }

    private static void search(CubeState reached, CubeState goal, int left, Deque<Turn> path, List<List<Turn>> found) {
        if (left == 0) {
            if (reached.equals(goal)) {
                found.add(List.copyOf(path));
            }
            return;
        }
        for (Turn turn : Turn.all()) {
            Turn last = path.peekLast();
            // Of one axis, in one order, each face once.
            if (last != null
                    && last.commutesWith(turn)
                    && last.face().ordinal() >= turn.face().ordinal()) {
                continue;
            }
            path.addLast(turn);
            search(reached.apply(turn), goal, left - 1, path, found);
            path.removeLast();
        }
    }
}
