package fermata.analysis.goal;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class HeldStateTest {
    static List<Orientation> holds() {
        return Orientation.all();
    }

    /** A few turns from solved, so that some pieces are home and some are not. */
    private static CubeState someState(SplittableRandom random) {
        CubeState state = CubeState.SOLVED;
        for (int turns = random.nextInt(8); turns > 0; turns--) {
            state = state.apply(Turn.ofIndex(random.nextInt(18)));
        }
        return state;
    }

    @ParameterizedTest
    @MethodSource("holds")
    void shouldShowTheStickersAsSeenWhenRenamed(Orientation hold) {
        SplittableRandom random = new SplittableRandom(hold.index());
        for (int run = 0; run < 50; run++) {
            CubeState state = someState(random);
            StringBuilder seen = new StringBuilder();
            for (char centre : hold.facelets(state).toCharArray()) {
                seen.append(hold.handAt(Face.of(centre)).name());
            }
            assertThat(HeldState.renamed(state, hold).facelets()).isEqualTo(seen.toString());
        }
    }

    @ParameterizedTest
    @MethodSource("holds")
    void shouldHaveThePiecesThatAreSolvedWhenRenamed(Orientation hold) {
        SplittableRandom random = new SplittableRandom(hold.index());
        for (int run = 0; run < 50; run++) {
            HeldState held = new HeldState(new CoreState(someState(random)), hold);
            for (Corner corner : Corner.values()) {
                assertThat(held.has(PieceSet.of(List.of(corner), List.of())))
                        .isEqualTo(held.renamed().isSolved(corner));
            }
            for (Edge edge : Edge.values()) {
                PieceSet alone = PieceSet.of(List.of(), List.of(edge));
                Turn turn = Turn.ofIndex(random.nextInt(18));
                assertThat(held.has(alone)).isEqualTo(held.renamed().isSolved(edge));
                assertThat(held.hasAfter(turn.face(), turn.quarters(), alone))
                        .isEqualTo(held.renamed().apply(turn).isSolved(edge));
            }
        }
    }
}
