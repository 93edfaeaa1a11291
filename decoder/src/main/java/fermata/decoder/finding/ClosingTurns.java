package fermata.decoder.finding;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;

/**
 * How many turns are missing from a list that should lead from solved to solved. There are 4.3e19 states, so that a
 * list that was read wrongly does not close with three turns anywhere by chance (one in a thousand million).
 */
final class ClosingTurns {
    /** Beyond this, pairs of missing turns take more than a few seconds and memory. */
    private static final int MOST_FOR_PAIRS = 400;

    private ClosingTurns() {}

    /**
     * The fewest turns that close the list.
     *
     * @param turns as read
     * @param places before which turn of the list one may be missing, 0 to its size
     * @param most missing turns to look for, at most 4; 3 at more than some twenty places
     */
    static OptionalInt missing(List<Turn> turns, Set<Integer> places, int most) {
        CubeState goal = CubeState.SOLVED.apply(turns).inverse();
        if (goal.isSolved()) {
            return OptionalInt.of(0);
        }
        Set<CubeState> ones = insertions(turns, places);
        if (most >= 1 && ones.contains(goal)) {
            return OptionalInt.of(1);
        }
        Map<CubeState, CubeState> backOnes = new LinkedHashMap<>();
        ones.forEach(one -> backOnes.put(one, one.inverse().then(goal)));
        if (most >= 2 && backOnes.values().stream().anyMatch(ones::contains)) {
            return OptionalInt.of(2);
        }
        if (most >= 3 && ones.size() <= MOST_FOR_PAIRS * 18 && isThree(ones, backOnes)) {
            return OptionalInt.of(3);
        }
        return most >= 4 && ones.size() <= MOST_FOR_PAIRS && isFour(ones, backOnes)
                ? OptionalInt.of(4)
                : OptionalInt.empty();
    }

    /** What one more turn at each place makes of the whole list. */
    private static Set<CubeState> insertions(List<Turn> turns, Set<Integer> places) {
        Set<CubeState> insertions = new HashSet<>();
        CubeState before = CubeState.SOLVED;
        for (int place = 0; place <= turns.size(); place++) {
            if (places.contains(place)) {
                CubeState back = before.inverse();
                for (Turn turn : Turn.all()) {
                    insertions.add(before.apply(turn).then(back));
                }
            }
            before = place < turns.size() ? before.apply(turns.get(place)) : before;
        }
        return insertions;
    }

    private static boolean isThree(Set<CubeState> ones, Map<CubeState, CubeState> backOnes) {
        List<CubeState> inverses = ones.stream().map(CubeState::inverse).toList();
        for (CubeState goal : backOnes.values()) {
            for (CubeState inverse : inverses) {
                if (ones.contains(inverse.then(goal))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static boolean isFour(Set<CubeState> ones, Map<CubeState, CubeState> backOnes) {
        Set<CubeState> pairs = new HashSet<>();
        List<CubeState> list = new ArrayList<>(ones);
        list.forEach(a -> list.forEach(b -> pairs.add(a.then(b))));
        for (CubeState goal : backOnes.values()) {
            for (CubeState one : list) {
                if (pairs.contains(one.inverse().then(goal))) {
                    return true;
                }
            }
        }
        return false;
    }
}
