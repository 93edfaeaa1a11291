package fermata.rehearsal.planning;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.notation.CoreWalk;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.character.Chance;
import fermata.rehearsal.character.Handling;
import fermata.rehearsal.character.LeftSide;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The words are common practice: z U R U' z' for L U L', d for U y'. That they say the same is arithmetic. */
class PhrasingTest {
    @ParameterizedTest
    @CsvSource({
        "TILTED, false, 0, U L U' L' R, U z U R' U' z' R",
        "TILTED, true, 0, U L U' L' R, z R U R' U' z' R",
        "TILTED, false, 1, R U y' R' L2, R d R' z U2 z'",
        "TILTED, false, 0, R U y' R', R U y' R'",
        "FACED, false, 1, R U' y U y y', R d' U y y'",
        "IN_PLACE, true, 1, U L U', U L U'"
    })
    void shouldSayTheSameTurnsAsTheHandWouldMakeThem(
            LeftSide left, boolean early, double wide, String meant, String made) {
        Phrasing phrasing =
                new Phrasing(new Handling(left, early, true, wide, Set.of()), new Chance(new SplittableRandom(1)));
        Sequence sequence = Sequence.parse(meant);
        Sequence said = new Sequence(phrasing.of(sequence.moves()));

        assertThat(said).isEqualTo(Sequence.parse(made));
        CoreWalk walk = said.walk(Orientation.IDENTITY);
        assertThat(walk.turns()).isEqualTo(sequence.walk(Orientation.IDENTITY).turns());
        assertThat(walk.end()).isEqualTo(sequence.walk(Orientation.IDENTITY).end());
    }
}
