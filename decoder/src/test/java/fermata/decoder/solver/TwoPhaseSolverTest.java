package fermata.decoder.solver;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TwoPhaseSolverTest {
    private final TwoPhaseSolver solver = new TwoPhaseSolver();

    @Test
    void shouldSolveWithinTheLimitWhenStatesAreRandom() {
        SplittableRandom random = new SplittableRandom(20261125);
        long turns = 0;
        for (int round = 0; round < 200; round++) {
            CubeState state = RandomStates.uniform(random);
            List<Turn> solution = solver.solve(state);
            assertThat(state.apply(solution).isSolved())
                    .as("solution of %s", state)
                    .isTrue();
            assertThat(solution).hasSizeLessThanOrEqualTo(TwoPhaseSolver.LONGEST);
            turns += solution.size();
        }
        // No outside value: our first answers average a little over 22 turns, and no method beats 20 for every state.
        assertThat(turns / 200.0).isBetween(17.0, 22.9);
    }

    @Test
    void shouldLeadToTheStateWhenAskedForAScramble() {
        CubeState state = RandomStates.forScramble(new SplittableRandom(7));
        assertThat(CubeState.SOLVED.apply(solver.scrambleTo(state))).isEqualTo(state);
    }

    @Test
    void shouldSolveTheSuperflipWhenEveryEdgeIsFlipped() {
        // One of the two 20-turn words for the centre of the cube group, checked with GAP 4.12.1.
        CubeState superflip = Sequence.parse("U R2 F B R B2 R U2 L B2 R U' D' R2 F R' L B2 U2 F2")
                .state();
        assertThat(Arrays.stream(Edge.values()).allMatch(edge -> superflip.flipAt(edge) == 1))
                .isTrue();
        List<Turn> solution = solver.solve(superflip);
        assertThat(superflip.apply(solution).isSolved()).isTrue();
        assertThat(solution).hasSizeBetween(20, TwoPhaseSolver.LONGEST);
    }

    @Test
    void shouldNeedNoTurnWhenSolvedAndSomeWhenOneAway() {
        assertThat(solver.solve(CubeState.SOLVED)).isEmpty();
        for (Turn turn : Turn.all()) {
            CubeState state = CubeState.of(turn);
            assertThat(state.apply(solver.solve(state)).isSolved()).isTrue();
        }
    }

    @Test
    void shouldSayWhyWhenACornerIsTwisted() {
        int[] twists = new int[8];
        twists[Corner.URF.ordinal()] = 1;
        CubeState twisted = CubeState.ofCubies(
                new int[] {0, 1, 2, 3, 4, 5, 6, 7},
                twists,
                new int[] {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11},
                new int[12]);
        assertThatThrownBy(() -> solver.solve(twisted))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("twisted by hand")
                .hasMessageContaining("reassemble");
    }
}
