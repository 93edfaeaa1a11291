package fermata.analysis.hold.assessment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class HoldAssessmentTest {
    @Test
    void shouldWeighSolvesByTheirTurnsWhenSharesAreTaken() {
        HoldAssessment assessment = HoldAssessment.of(List.of(solve(10, 10, 1), solve(30, 10, 0.5)), 1);

        assertThat(assessment.holdShare().value()).isEqualTo(0.5);
        assertThat(assessment.solvesAllRight()).isEqualTo(1);
        assertThat(assessment.rotations().f1().value()).isEqualTo(0.5);
        // Every solve has two hits of four found and four made, so no draw of solves can change the shares.
        assertThat(assessment.rotations().precision()).isEqualTo(new Share(0.5, 0.5, 0.5));
        assertThat(assessment.rotations().recall()).isEqualTo(new Share(0.5, 0.5, 0.5));
    }

    @Test
    void shouldBinByStatedProbabilityAndPriceTheDistance() {
        HoldAssessment assessment = HoldAssessment.of(List.of(solve(10, 10, 1), solve(30, 10, 0.5)), 1);

        assertThat(assessment.reliability().get(9).turns()).isEqualTo(10);
        assertThat(assessment.reliability().get(5).right()).isEqualTo(10);
        // 30 turns stated at 0.5 of which a third was right: 5 too many of 40
        assertThat(assessment.calibrationError()).isCloseTo(5.0 / 40, within(1e-12));
    }

    @Test
    void shouldGiveTheNormalIntervalWhenManySolvesVaryAtRandom() {
        List<SolveScore> scores = new ArrayList<>();
        for (int solve = 0; solve < 400; solve++) {
            scores.add(solve(10, solve % 2 == 0 ? 10 : 0, 1));
        }
        HoldAssessment assessment = HoldAssessment.of(scores, 1);

        // Half the solves right: standard error of the share sqrt(0.25 / 400) = 0.025, 95 % at 1.96 of it.
        assertThat(assessment.holdShare().low()).isCloseTo(0.451, within(0.01));
        assertThat(assessment.holdShare().high()).isCloseTo(0.549, within(0.01));
    }

    private static SolveScore solve(int turns, int right, double stated) {
        List<SolveScore.Stated> holds = new ArrayList<>();
        for (int turn = 0; turn < turns; turn++) {
            holds.add(new SolveScore.Stated(stated, turn < right));
        }
        return new SolveScore(turns, right, holds, 4, 4, 2, -1.0 * turns);
    }
}
