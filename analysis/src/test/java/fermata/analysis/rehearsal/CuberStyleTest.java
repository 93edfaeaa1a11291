package fermata.analysis.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.decoder.cube.Face;
import java.util.List;
import org.junit.jupiter.api.Test;

class CuberStyleTest {
    @Test
    void shouldOfferBothHandsWhenCharactersAreListed() {
        assertThat(CuberStyle.characters()).hasSizeGreaterThanOrEqualTo(3);
        assertThat(CuberStyle.characters().stream().map(CuberStyle::hand)).contains(CuberHand.LEFT, CuberHand.RIGHT);
    }

    @Test
    void shouldNameFieldAndValueWhenAFigureIsOutOfRange() {
        assertThatThrownBy(() -> new Habits(List.of(Face.U), 5, false, false, 0))
                .hasMessageContaining("pairsNoticed 5");
        assertThatThrownBy(() -> new Habits(List.of(), 1, false, false, 0)).hasMessageContaining("crossFaces");
        assertThatThrownBy(() -> new Habits(List.of(Face.U), 1, false, false, Double.NaN))
                .hasMessageContaining("slipProbability NaN");
        assertThatThrownBy(() -> new Pace(0, 1, 1, 1, 0, 0)).hasMessageContaining("sameFaceMicros 0");
        assertThatThrownBy(() -> new Pauses(1.5, 1, 1, 1, 1, 1, 0)).hasMessageContaining("lookAheadProbability 1.5");
        assertThatThrownBy(() -> new EveningPlan(-1, 0, 0, 0, 0)).hasMessageContaining("solves -1");
        assertThatThrownBy(() -> new EveningPlan(1, 0, 1, 0, 0)).hasMessageContaining("abandonShare 1.0");
    }
}
