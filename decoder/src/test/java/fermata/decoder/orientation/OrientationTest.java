package fermata.decoder.orientation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.ReferenceTable;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class OrientationTest {
    /** Source: `rotations24.csv`, the 24 rotations computed with GAP 4.12.1. */
    static Stream<List<String>> rotations() {
        return ReferenceTable.rows("rotations24.csv");
    }

    @ParameterizedTest
    @MethodSource("rotations")
    void shouldPutTheFacesWhereGapDoesWhenACubeIsRotated(List<String> row) {
        String word = row.get(0).equals("(none)") ? "" : row.get(0);
        Orientation orientation =
                Sequence.parse(word).walk(Orientation.IDENTITY).end();

        for (int place = 0; place < 6; place++) {
            assertThat(orientation.coreAt(Face.values()[place]).name()).isEqualTo(row.get(2 + place));
        }
        assertThat(Sequence.parse(orientation.word()).moves())
                .hasSameSizeAs(Sequence.parse(word).moves());
        assertThat(orderOf(orientation)).isEqualTo(Integer.parseInt(row.get(1)));
    }

    @Test
    void shouldBeAGroupOfTwentyFour() {
        Set<String> letters = new HashSet<>();
        for (Orientation first : Orientation.all()) {
            letters.add(first.letters());
            assertThat(Orientation.ofLetters(first.letters())).isSameAs(first);
            assertThat(first.then(first.inverse())).isSameAs(Orientation.IDENTITY);
            assertThat(Sequence.parse(first.word()).walk(Orientation.IDENTITY).end())
                    .isSameAs(first);
            for (Orientation second : Orientation.all()) {
                assertThat(first.then(first.to(second))).isSameAs(second);
            }
        }
        assertThat(letters).hasSize(24);
    }

    @Test
    void shouldTurnTheSameLayerWhenNamedByHandOrByCore() {
        for (Orientation hold : Orientation.all()) {
            for (Turn hand : Turn.all()) {
                Turn core = hold.toCore(hand);
                assertThat(hold.toHand(core)).isEqualTo(hand);
                // Seen by the solver, a solved cube after the turn looks as it would in the identity hold, relabelled.
                String seen = hold.facelets(CubeState.of(core));
                String relabelled = relabel(CubeState.of(hand).facelets(), hold);
                assertThat(seen).as("%s in %s", hand, hold).isEqualTo(relabelled);
            }
        }
    }

    @Test
    void shouldSayWhyWhenTwoFacesMakeNoHold() {
        assertThatThrownBy(() -> Orientation.of(Face.U, Face.D)).hasMessage("U cannot be up while D is in front");
        assertThatThrownBy(() -> Orientation.ofLetters("U"))
                .hasMessage("hold \"U\" is not two face letters, up and front");
    }

    private static String relabel(String facelets, Orientation hold) {
        StringBuilder letters = new StringBuilder();
        for (char letter : facelets.toCharArray()) {
            letters.append(hold.coreAt(Face.of(letter)));
        }
        return letters.toString();
    }

    private static int orderOf(Orientation orientation) {
        Orientation power = orientation;
        int order = 1;
        while (power != Orientation.IDENTITY) {
            power = power.then(orientation);
            order++;
        }
        return order;
    }
}
