package fermata.analysis.method;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.notation.Sequence;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Class counts from the reference table {@code f2l_last_pair_classes.csv} (GAP 4.12.1): 36 of 4 states, 6 of 1. */
class PairCasesTest {
    @Test
    void shouldFind41ClassesAndTheSolvedOneWhenBothPiecesAreInUOrTheirPlace() {
        Map<String, Integer> states = new HashMap<>();
        for (int corner : new int[] {0, 1, 2, 3, 4}) {
            for (int twist = 0; twist < 3; twist++) {
                for (int edge : new int[] {0, 1, 2, 3, 8}) {
                    for (int flip = 0; flip < 2; flip++) {
                        states.merge(PairCases.of(placed(corner, twist, edge, flip), Slot.FR), 1, Integer::sum);
                    }
                }
            }
        }

        assertThat(states).hasSize(42).containsEntry(LastLayerCases.SKIP, 1);
        assertThat(states.values().stream().filter(count -> count == 4)).hasSize(36);
        assertThat(states.values().stream().filter(count -> count == 1)).hasSize(6);
    }

    @Test
    void shouldGiveEverySlotTheSameNameWhenTheSameThingHappenedToIt() {
        String atFront = PairCases.of(Sequence.parse("R U R'").state(), Slot.FR);

        assertThat(PairCases.of(Sequence.parse("F U F'").state(), Slot.FL)).isEqualTo(atFront);
        assertThat(PairCases.of(Sequence.parse("L U L'").state(), Slot.BL)).isEqualTo(atFront);
        assertThat(PairCases.of(Sequence.parse("B U B'").state(), Slot.BR)).isEqualTo(atFront);
        assertThat(PairCases.of(Sequence.parse("R U' R'").state(), Slot.FR)).isNotEqualTo(atFront);
    }

    /** The cubies DFR and FR put in a place by exchange with what was there; other pieces do not matter here. */
    private static CubeState placed(int corner, int twist, int edge, int flip) {
        int[] corners = {0, 1, 2, 3, 4, 5, 6, 7};
        int[] edges = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11};
        int[] twists = new int[8];
        int[] flips = new int[12];
        corners[Corner.DFR.ordinal()] = corner;
        corners[corner] = Corner.DFR.ordinal();
        twists[corner] = twist;
        edges[Edge.FR.ordinal()] = edge;
        edges[edge] = Edge.FR.ordinal();
        flips[edge] = flip;
        return CubeState.ofCubies(corners, twists, edges, flips);
    }
}
