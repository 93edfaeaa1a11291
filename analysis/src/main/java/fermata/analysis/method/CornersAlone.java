package fermata.analysis.method;

import fermata.analysis.goal.HeldState;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Whether the eight corners are right among themselves, wherever slices have left the centres and edges. */
final class CornersAlone {
    private static final List<Face> LAYERS = List.of(Face.U, Face.R, Face.F);

    /** What turning all corners as one body makes of them: the 24 rotations. */
    private static final Set<Long> ROTATIONS = rotations();

    private CornersAlone() {}

    /** Up to a turn of one layer; opposite layers make the same difference, so that the hold makes none. */
    static boolean inPlace(HeldState state) {
        return ROTATIONS.contains(corners(state.core()))
                || LAYERS.stream().anyMatch(face -> lacksTurn(state.core(), face));
    }

    private static boolean lacksTurn(CubeState state, Face face) {
        for (int quarters = 1; quarters <= 3; quarters++) {
            if (ROTATIONS.contains(corners(state.apply(Turn.of(face, quarters))))) {
                return true;
            }
        }
        return false;
    }

    private static Set<Long> rotations() {
        Set<Long> seen = new HashSet<>();
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

    /** Which corner is in each place and how it lies, as digits in base 24. */
    private static long corners(CubeState state) {
        long digits = 0;
        for (Corner place : Corner.values()) {
            digits = 24 * digits + 3 * state.cornerAt(place).ordinal() + state.twistAt(place);
        }
        return digits;
    }
}
