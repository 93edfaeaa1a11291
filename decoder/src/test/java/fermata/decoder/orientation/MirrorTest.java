package fermata.decoder.orientation;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.solver.RandomStates;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class MirrorTest {
    @Test
    void shouldShowTheSameCubeTwiceMirroredWhenMirrored() {
        SplittableRandom random = new SplittableRandom(2);
        Sequence words = Sequence.parse("R U' r F2 y D u' x L' B z' f M' E S2");
        Sequence mirroredWords =
                new Sequence(words.moves().stream().map(Move::mirrored).toList());
        for (int round = 0; round < 50; round++) {
            CubeState state = RandomStates.uniform(random);
            CubeState mirrored = Mirror.of(state);

            assertThat(Mirror.of(mirrored)).isEqualTo(state);
            assertThat(mirrored.apply(mirroredWords.walk(Orientation.IDENTITY).turns()))
                    .isEqualTo(Mirror.of(
                            state.apply(words.walk(Orientation.IDENTITY).turns())));
        }
    }

    /** The stickers themselves, place for place: what a glass between R and L shows of the 54 letters. */
    @Test
    void shouldExchangeTheStickersOfLeftAndRightWhenAStateIsMirrored() {
        SplittableRandom random = new SplittableRandom(3);
        for (int round = 0; round < 50; round++) {
            CubeState state = RandomStates.uniform(random);
            String letters = state.facelets();

            String shown = IntStream.range(0, 54)
                    .mapToObj(place -> Mirror.of(Face.of(letters.charAt(Mirror.ofPlace(place))))
                            .name())
                    .reduce("", String::concat);

            assertThat(Mirror.of(state).facelets()).isEqualTo(shown);
        }
    }

    @Test
    void shouldKeepEachHoldsMeaningWhenAHoldIsMirrored() {
        for (Orientation hold : Orientation.all()) {
            for (Face face : Face.values()) {
                assertThat(Mirror.of(hold).coreAt(Mirror.of(face))).isEqualTo(Mirror.of(hold.coreAt(face)));
            }
        }
    }
}
