package fermata.analysis.beat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.event.Hand;
import fermata.analysis.hand.HandReader;
import fermata.analysis.hand.HandReading;
import fermata.analysis.hand.MadeTurn;
import fermata.analysis.hand.TurnOdds;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldHabits;
import fermata.analysis.rest.Performed;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.character.CuberStyle;
import java.util.List;
import org.junit.jupiter.api.Test;

class HandFactsTest {
    private static final Move R = Sequence.parse("R").moves().get(0);
    private static final Move U = Sequence.parse("U").moves().get(0);

    /** Two readings: R then U without a rotation, 0.6 likely; or with the cube turned between them, R then R. */
    @Test
    void shouldTakeWhatIsLikelyOverAllReadingsAndNotTheLikeliestAlone() {
        TurnOdds second = new TurnOdds(0.4, List.of(0.6, 0.4, 0.0, 0.0, 0.0, 0.0));
        HandReading reading = new HandReading(
                List.of(new MadeTurn(R, Orientation.IDENTITY, 1), new MadeTurn(U, Orientation.IDENTITY, 0.6)),
                List.of(),
                false,
                List.of(TurnOdds.certain(R, 0), second));

        HandFacts facts = HandFacts.of(reading, Hand.LEFT);

        assertThat(facts.isRead()).isTrue();
        assertThat(facts.hand()).isEqualTo(Hand.LEFT);
        assertThat(facts.turns().get(1).move()).isEqualTo(U);
        assertThat(facts.turns().get(1).holdProbability()).isEqualTo(0.6);
        // No rotation stands in the likeliest reading, and yet one is 0.4 likely.
        assertThat(facts.turns().get(1).rotationProbability()).isEqualTo(0.4);
        assertThat(facts.turns().get(1).odds()).isEqualTo(second);
    }

    @Test
    void shouldHoldMoreThanTheLikeliestReadingsRotationsWhereReadingsDiffer() {
        HandReader reader = new HandReader(new HoldInference(HoldModel.shipped()));
        double likely = 0;
        int doubted = 0;
        for (Performed solve : Performed.evening(CuberStyle.cook(), 12, 4)) {
            HandReading reading = reader.read(solve.record(), HoldHabits.NONE, HoldEvidence.NONE)
                    .orElseThrow();
            HandFacts facts = HandFacts.of(reading, Hand.LEFT);

            assertThat(facts.turns()).hasSameSizeAs(solve.turns());
            for (int turn = 0; turn < facts.turns().size(); turn++) {
                int at = turn;
                HandFacts.AtTurn fact = facts.turns().get(turn);
                boolean isNamed = reading.rotations().stream().anyMatch(rotation -> rotation.beforeTurn() == at);
                likely += fact.rotationProbability();
                doubted += !isNamed && fact.rotationProbability() > 0.05 ? 1 : 0;
                assertThat(fact.odds().layers().stream()
                                .mapToDouble(Double::doubleValue)
                                .sum())
                        .isCloseTo(1, within(1e-6));
            }
        }
        assertThat(likely).isPositive();
        assertThat(doubted).isPositive();
    }

    @Test
    void shouldRefuseAProbabilityThatIsNone() {
        TurnOdds odds = TurnOdds.certain(R, 0);

        assertThatThrownBy(() -> new HandFacts.AtTurn(R, Orientation.IDENTITY, 1.01, odds))
                .hasMessageContaining("holdProbability 1.01");
    }
}
