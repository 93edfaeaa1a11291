package fermata.decoder.solver;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Legality;
import fermata.decoder.cube.Turn;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class RandomStatesTest {
    private static final int ROUNDS = 4_800;

    @Test
    void shouldGiveLegalStatesOfBothParitiesWhenUniform() {
        SplittableRandom random = new SplittableRandom(4);
        int[] cornerAtFirst = new int[8];
        int[] edgeAtLast = new int[12];
        int[] flips = new int[2];
        int[] twists = new int[3];
        for (int round = 0; round < ROUNDS; round++) {
            CubeState state = RandomStates.uniform(random);
            assertThat(state.legality()).isEqualTo(Legality.LEGAL);
            cornerAtFirst[state.cornerAt(Corner.URF).ordinal()]++;
            edgeAtLast[state.edgeAt(Edge.BR).ordinal()]++;
            flips[state.flipAt(Edge.BR)]++;
            twists[state.twistAt(Corner.DRB)]++;
        }
        // Chi-squared quantiles at 1 - 1e-6 for 7, 11, 1 and 2 degrees of freedom (any table).
        assertThat(chiSquared(cornerAtFirst)).isLessThan(40.5);
        assertThat(chiSquared(edgeAtLast)).isLessThan(48.9);
        assertThat(chiSquared(flips)).isLessThan(23.9);
        assertThat(chiSquared(twists)).isLessThan(27.6);
    }

    @Test
    void shouldRefuseNineteenStatesWhenOneTurnIsEnough() {
        assertThat(RandomStates.isWithinOneTurn(CubeState.SOLVED)).isTrue();
        for (Turn turn : Turn.all()) {
            assertThat(RandomStates.isWithinOneTurn(CubeState.of(turn))).isTrue();
        }
        assertThat(RandomStates.isWithinOneTurn(CubeState.of(Turn.parse("R")).apply(Turn.parse("U"))))
                .isFalse();
    }

    @Test
    void shouldRepeatItselfWhenTheSeedIsTheSame() {
        assertThat(RandomStates.forScramble(new SplittableRandom(11)))
                .isEqualTo(RandomStates.forScramble(new SplittableRandom(11)));
    }

    private static double chiSquared(int[] counts) {
        double expected = (double) ROUNDS / counts.length;
        double sum = 0;
        for (int count : counts) {
            sum += (count - expected) * (count - expected) / expected;
        }
        return sum;
    }
}
