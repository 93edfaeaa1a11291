package fermata.rehearsal.character;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.Sequence;
import fermata.rehearsal.EveningPlan;
import fermata.rehearsal.planning.PairPlanner;
import fermata.rehearsal.truth.CuberHand;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CuberStyleTest {
    @Test
    void shouldOfferBothHandsWhenCharactersAreListed() {
        assertThat(CuberStyle.characters()).hasSizeGreaterThanOrEqualTo(3);
        assertThat(CuberStyle.characters().stream().map(CuberStyle::hand)).contains(CuberHand.LEFT, CuberHand.RIGHT);
    }

    @Test
    void shouldNameFieldAndValueWhenAFigureIsOutOfRange() {
        assertThatThrownBy(() -> new CuberHabits(List.of(Face.U), 5, false, false, 0, Handling.usual()))
                .hasMessageContaining("pairsNoticed 5");
        assertThatThrownBy(() -> new CuberHabits(List.of(), 1, false, false, 0, Handling.usual()))
                .hasMessageContaining("crossFaces");
        assertThatThrownBy(() -> new CuberHabits(List.of(Face.U), 1, false, false, Double.NaN, Handling.usual()))
                .hasMessageContaining("slipProbability NaN");
        assertThatThrownBy(() -> new Handling(LeftSide.FACED, false, true, 2, Set.of()))
                .hasMessageContaining("wideShare 2.0");
        assertThatThrownBy(() -> new Handling(LeftSide.FACED, false, true, 0, Set.of("33")))
                .hasMessageContaining("ownCases 33");
        assertThatThrownBy(() -> new Pace(0, 1, 1, 1, 0, 0)).hasMessageContaining("sameFaceMicros 0");
        assertThatThrownBy(() -> new Pauses(1.5, 1, 1, 1, 1, 1, 0)).hasMessageContaining("lookAheadProbability 1.5");
        assertThatThrownBy(() -> new EveningPlan(-1, 0, 0, 0, 0)).hasMessageContaining("solves -1");
        assertThatThrownBy(() -> new EveningPlan(1, 0, 1, 0, 0)).hasMessageContaining("abandonShare 1.0");
    }

    @Test
    void shouldWriteDownWhatTheHandTurnsWhenSequencesAreAsked() {
        for (CuberStyle style : CuberStyle.characters()) {
            assertThat(style.sequences()).hasSize(57 + 21).doesNotHaveDuplicates();
            for (String words : style.sequences()) {
                CubeState state =
                        HandMirror.before(style.hand()).of(Sequence.parse(words).state());
                assertThat(PairPlanner.home(state)).as(words).hasSize(4);
            }
        }
    }
}
