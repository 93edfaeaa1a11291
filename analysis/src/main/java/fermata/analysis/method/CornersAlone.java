package fermata.analysis.method;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Whether the eight corners are right among themselves, wherever slices have left the centres and edges. */
final class CornersAlone {
    /** What turning all corners as one body makes of them: the 24 rotations. */
    private static final Set<List<Integer>> ROTATIONS = rotations();

    private CornersAlone() {}

    /** Up to a turn of one layer; opposite layers make the same difference. */
    static boolean inPlace(CubeState state) {
        return List.of(Face.U, Face.R, Face.F).stream()
                .anyMatch(face -> Pieces.upToTurn(state, face, turned -> ROTATIONS.contains(corners(turned))));
    }

    private static Set<List<Integer>> rotations() {
        Set<List<Integer>> seen = new HashSet<>();
        Deque<CubeState> open = new ArrayDeque<>(List.of(CubeState.SOLVED));
        while (!open.isEmpty()) {
            CubeState state = open.pop();
            if (seen.add(corners(state))) {
                open.push(state.apply(Turn.of(Face.R, 1)).apply(Turn.of(Face.L, -1)));
                open.push(state.apply(Turn.of(Face.U, 1)).apply(Turn.of(Face.D, -1)));
            }
        }
        return seen;
    }

    private static List<Integer> corners(CubeState state) {
        List<Integer> corners = new ArrayList<>(8);
        for (Corner place : Corner.values()) {
            corners.add(3 * state.cornerAt(place).ordinal() + state.twistAt(place));
        }
        return corners;
    }
}
