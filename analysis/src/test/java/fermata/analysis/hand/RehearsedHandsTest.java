package fermata.analysis.hand;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.SensorStyle;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The quick version of {@link RehearsedHandsProofTest}: rehearsed solves, so the machinery and not the world. */
class RehearsedHandsTest {
    @Test
    void shouldReadNearlyEveryHoldWhenTheCubeTellsHowItLies() {
        RehearsedHands hands = RehearsedHands.of(CuberStyle.cook(), 31, 8, Optional.of(SensorStyle.usual()));

        assertThat(hands.score().share()).isGreaterThanOrEqualTo(0.995);
    }
}
