package fermata.analysis.hold.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import fermata.analysis.hold.HoldReadings;
import fermata.analysis.hold.HoldTrack;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The rules of equality; every pair here makes the same core-frame turns (checked by the comparison itself). */
class SolveScoreTest {
    @ParameterizedTest
    @CsvSource({
        "R U r U' F,R U L x U' F",
        "U d R,U U y' R",
        "R M' U,R R' L x U",
        "R U y L,R y U L",
        "R z U D' R,R z U D' R",
        "F2 r2 U R,F2 L2 x2 U R",
    })
    void shouldFindNothingWrongWhenBothWriteTheSameEvent(String truth, String read) {
        SolveScore score = score(truth, read);

        assertThat(score.holdsRight()).isEqualTo(score.turns());
        assertThat(score.layersRight()).isEqualTo(score.turns());
        assertThat(score.rotationsHit()).isEqualTo(score.rotationsTrue()).isEqualTo(score.rotationsFound());
    }

    @Test
    void shouldCallTheHoldWrongWhenOnlyTheNextTurnsLayerIs() {
        SolveScore score = score("R U R'", "R U y F'");

        assertThat(score.layersRight()).isEqualTo(2);
        // U is seen at U, yet the hold about it is not known by it: the turn after it is wrong. R is fixed by U.
        assertThat(score.holds()).extracting(SolveScore.Stated::right).containsExactly(true, false, false);
        assertThat(score.rotationsTrue()).isZero();
        assertThat(score.rotationsFound()).isEqualTo(1);
    }

    @Test
    void shouldHoldTheLastRunAgainstTheTurnBeforeIt() {
        SolveScore score = score("R U D", "y F U D");

        assertThat(score.holds()).extracting(SolveScore.Stated::right).containsExactly(false, false, false);
        assertThat(score.layersRight()).isEqualTo(2);
    }

    @Test
    void shouldNotCountRotationsBeforeTheFirstTurn() {
        SolveScore score = score("x2 y R U R'", "x2 y R U R'");

        assertThat(score.rotationsTrue()).isZero();
        assertThat(score.rotationsFound()).isZero();
    }

    @ParameterizedTest
    @CsvSource({
        // one turn further on, not commuting
        "R z U R' U,R L z R' U,1",
        // two turns further on
        "R z U R' F,R L U' z F,0",
        // another net rotation in the same place
        "R z U R' F,R z2 R D' F,0",
    })
    void shouldHitARotationWhenItStandsWithinOneTurn(String truth, String read, int hits) {
        assertThat(score(truth, read).rotationsHit()).isEqualTo(hits);
    }

    @Test
    void shouldRefuseWhenTheTurnsDiffer() {
        assertThatThrownBy(() -> score("R U", "R F")).hasMessageContaining("other turns");
    }

    private static SolveScore score(String truth, String read) {
        HoldTrack track = HoldTrack.of(Sequence.parse(truth), Orientation.IDENTITY);
        HoldTrack other = HoldTrack.of(Sequence.parse(read), Orientation.IDENTITY);
        return SolveScore.of(track, HoldReadings.certain(other));
    }
}
