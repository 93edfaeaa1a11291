package fermata.analysis.hold.sequence;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.hold.PublicSolves;
import fermata.decoder.cube.Axis;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class OrientedEdgesTest {
    /** By definition: what turns without a quarter turn about the axis can be undone without one. */
    @ParameterizedTest
    @EnumSource(Axis.class)
    void shouldStayOrientedWhenNoQuarterTurnIsAboutTheAxis(Axis axis) {
        List<Turn> harmless = Stream.of(Turn.all())
                .filter(turn -> turn.face().axis() != axis || turn.quarters() == 2)
                .toList();
        List<Turn> harmful = Stream.of(Turn.all())
                .filter(turn -> turn.face().axis() == axis && turn.quarters() != 2)
                .toList();
        SplittableRandom random = new SplittableRandom(5);
        CubeState state = CubeState.SOLVED;
        for (int turn = 0; turn < 500; turn++) {
            state = state.apply(harmless.get(random.nextInt(harmless.size())));
            assertThat(OrientedEdges.all(state, axis)).isTrue();
            CubeState once = state.apply(harmful.get(random.nextInt(harmful.size())));
            assertThat(OrientedEdges.all(once, axis)).isFalse();
        }
    }

    /** The six one-handed ZZ solves of the public set say so in their source; the CFOP ones do not. */
    @Test
    void shouldTellWhoOrientsEdgesFirstWhenSolvesAreOneHanded() {
        for (PublicSolves.Solve solve : PublicSolves.all()) {
            if (solve.hands().equals("one")) {
                StreamFacts facts = new StreamFacts(
                        solve.example().start(), solve.example().track().turns());
                assertThat(facts.edgesFirst())
                        .as(solve.id())
                        .isEqualTo(solve.method().equals("ZZ"));
            }
        }
    }
}
