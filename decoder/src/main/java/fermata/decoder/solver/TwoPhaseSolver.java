package fermata.decoder.solver;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Legality;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * Solves any legal state in at most {@value #LONGEST} turns, not in the fewest.
 *
 * <p>Phase 1 searches, ever longer, for turns that reach the subgroup of U, D, R2, L2, F2, B2; for each such start
 * phase 2 tries to finish within what is left of the limit. The answer depends on the state alone. Cost: tables of
 * about 7 MB and a fraction of a second on the first call, then milliseconds. Instances are cheap and not
 * thread-safe; the tables are shared.
 */
public final class TwoPhaseSolver {
    /** No solution is longer than this, half turns counted as one. */
    public static final int LONGEST = 23;

    private static final int LONGEST_PHASE_1 = 12;
    private static final int LONGEST_PHASE_2 = 18;

    private final int[] path = new int[LONGEST];
    private CubeState start = CubeState.SOLVED;
    private int found;

    /**
     * Turns that solve the state; none for the solved one.
     *
     * @throws IllegalArgumentException if the state cannot be reached by turning, saying why
     */
    public List<Turn> solve(CubeState state) {
        Legality legality = state.legality();
        if (legality != Legality.LEGAL) {
            throw new IllegalArgumentException(
                    "state " + state + " has no solution: " + legality.reason() + "; reassemble the cube");
        }
        start = state;
        int twist = Coordinates.twist(state);
        int flip = Coordinates.flip(state);
        int slice = Coordinates.slice(state);
        for (int length = 0; length <= LONGEST_PHASE_1; length++) {
            if (reduce(twist, flip, slice, 0, length)) {
                return solution();
            }
        }
        throw new IllegalStateException("no solution of " + LONGEST + " turns for " + state);
    }

    /** Turns that lead from solved to the state: a scramble. Errors as {@link #solve(CubeState)}. */
    public List<Turn> scrambleTo(CubeState state) {
        List<Turn> turns = new ArrayList<>();
        for (Turn turn : solve(state)) {
            turns.add(turn.inverse());
        }
        Collections.reverse(turns);
        return List.copyOf(turns);
    }

    private List<Turn> solution() {
        List<Turn> turns = new ArrayList<>();
        for (int place = 0; place < found; place++) {
            turns.add(Turn.ofIndex(path[place]));
        }
        return List.copyOf(turns);
    }

    private boolean reduce(int twist, int flip, int slice, int done, int left) {
        if (left == 0) {
            return twist == 0 && flip == 0 && slice == 0 && finish(done);
        }
        for (int turn = 0; turn < 18; turn++) {
            if (isIdle(turn, done)) {
                continue;
            }
            int twistNext = Tables.TWIST.next(twist, turn);
            int flipNext = Tables.FLIP.next(flip, turn);
            int sliceNext = Tables.SLICE.next(slice, turn);
            if (Tables.TWIST_AND_SLICE.depth(twistNext, sliceNext) < left
                    && Tables.FLIP_AND_SLICE.depth(flipNext, sliceNext) < left) {
                path[done] = turn;
                if (reduce(twistNext, flipNext, sliceNext, done + 1, left - 1)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Phase 2 from where phase 1 arrived. */
    private boolean finish(int done) {
        // A phase 1 that ends on a turn of phase 2 was tried in full when it was one turn shorter.
        if (done > 0 && isReduced(path[done - 1])) {
            return false;
        }
        CubeState state = start;
        for (int place = 0; place < done; place++) {
            state = state.apply(Turn.ofIndex(path[place]));
        }
        int corners = Coordinates.corners(state);
        int outer = Coordinates.outerEdges(state);
        int middle = Coordinates.middleEdges(state);
        int longest = Math.min(LONGEST_PHASE_2, LONGEST - done);
        for (int length = bound(corners, outer, middle); length <= longest; length++) {
            if (permute(corners, outer, middle, done, length)) {
                return true;
            }
        }
        return false;
    }

    private boolean permute(int corners, int outer, int middle, int done, int left) {
        if (left == 0) {
            found = done;
            return corners == 0 && outer == 0 && middle == 0;
        }
        for (int turn = 0; turn < Tables.REDUCED.length; turn++) {
            int index = Tables.REDUCED[turn].index();
            if (isIdle(index, done)) {
                continue;
            }
            int cornersNext = Tables.CORNERS.next(corners, turn);
            int outerNext = Tables.OUTER_EDGES.next(outer, turn);
            int middleNext = Tables.MIDDLE_EDGES.next(middle, turn);
            if (bound(cornersNext, outerNext, middleNext) < left) {
                path[done] = index;
                if (permute(cornersNext, outerNext, middleNext, done + 1, left - 1)) {
                    return true;
                }
            }
        }
        return false;
    }

    private static int bound(int corners, int outer, int middle) {
        return Math.max(Tables.CORNERS_AND_MIDDLE.depth(corners, middle), Tables.EDGES_AND_MIDDLE.depth(outer, middle));
    }

    /** Same face twice running, or two turns of one axis in the order that is not the written one: nothing new. */
    private boolean isIdle(int turn, int done) {
        if (done == 0) {
            return false;
        }
        int face = turn / 3;
        int last = path[done - 1] / 3;
        return face == last || face + 3 == last;
    }

    /** Whether the turn belongs to phase 2: a half turn, or any turn of U or D. */
    private static boolean isReduced(int turn) {
        return turn % 3 == 1 || turn / 3 % 3 == 0;
    }
}
