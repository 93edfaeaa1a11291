package fermata.decoder.cube;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class TurnTest {
    @Test
    void shouldReadBackWhatItWrites() {
        for (Turn turn : Turn.all()) {
            assertThat(Turn.parse(turn.toString())).isSameAs(turn);
            assertThat(Turn.ofIndex(turn.index())).isSameAs(turn);
            assertThat(turn.inverse().inverse()).isEqualTo(turn);
            assertThat(CubeState.of(turn).apply(turn.inverse())).isEqualTo(CubeState.SOLVED);
        }
    }

    @Test
    void shouldNameTextAndAmountWhenItIsNoTurn() {
        assertThatThrownBy(() -> Turn.parse("R4")).hasMessageContaining("\"R4\"");
        assertThatThrownBy(() -> Turn.parse("")).hasMessageContaining("\"\"");
        assertThatThrownBy(() -> Turn.parse("Q")).hasMessage("face 'Q' is none of U R F D L B");
        assertThatThrownBy(() -> Turn.of(Face.U, 4)).hasMessageContaining("no turn");
        assertThatThrownBy(() -> new Turn(Face.U, 4)).hasMessage("quarters 4 of a turn is not in 1..3");
    }

    @Test
    void shouldCommuteExactlyWhenStatesDo() {
        for (Turn first : Turn.all()) {
            for (Turn second : Turn.all()) {
                boolean commute = CubeState.of(first)
                        .apply(second)
                        .equals(CubeState.of(second).apply(first));
                assertThat(first.commutesWith(second))
                        .as("%s %s", first, second)
                        .isEqualTo(commute);
            }
        }
    }
}
