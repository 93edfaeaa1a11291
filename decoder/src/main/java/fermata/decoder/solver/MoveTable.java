package fermata.decoder.solver;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.ToIntFunction;

/**
 * What each turn makes of a coordinate, found by walking states breadth-first from solved.
 *
 * <p>Values fit 16 unsigned bits: the largest coordinate has 40,320 values.
 */
final class MoveTable {
    private final char[] next;
    private final int turns;

    private MoveTable(char[] next, int turns) {
        this.next = next;
        this.turns = turns;
    }

    /** Cost: {@code size * turns.length} state products. */
    static MoveTable build(int size, Turn[] turns, ToIntFunction<CubeState> coordinate) {
        char[] next = new char[size * turns.length];
        CubeState[] member = new CubeState[size];
        Deque<Integer> open = new ArrayDeque<>();
        member[0] = CubeState.SOLVED;
        open.add(0);
        while (!open.isEmpty()) {
            int value = open.remove();
            for (int turn = 0; turn < turns.length; turn++) {
                CubeState reached = member[value].apply(turns[turn]);
                int to = coordinate.applyAsInt(reached);
                next[value * turns.length + turn] = (char) to;
                if (member[to] == null) {
                    member[to] = reached;
                    open.add(to);
                }
            }
            // The state has served; a waiting queue of 40,320 states would be the largest thing in memory.
            if (value != 0) {
                member[value] = CubeState.SOLVED;
            }
        }
        return new MoveTable(next, turns.length);
    }

    int next(int value, int turn) {
        return next[value * turns + turn];
    }

    int size() {
        return next.length / turns;
    }

    int turns() {
        return turns;
    }
}
