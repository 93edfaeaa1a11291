package fermata.analysis.hold;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.hold.assessment.HoldAssessment;
import fermata.analysis.hold.assessment.SolveScore;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.orientation.Quaternion;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class OrientationEvidenceTest {
    /** Any two holds are 0, 90, 120 or 180 degrees apart, as the rotations of a cube are. */
    @Test
    void shouldSetTheHoldsApartByTheAnglesOfTheRotationGroup() {
        int[] count = new int[181];
        for (Orientation hold : Orientation.all()) {
            double degrees = Math.toDegrees(OrientationEvidence.exact(hold).angle());
            count[(int) Math.round(degrees)]++;
            assertThat(degrees).isCloseTo(Math.rint(degrees), within(1e-6));
        }
        assertThat(new int[] {count[0], count[90], count[120], count[180]}).containsExactly(1, 6, 8, 9);
    }

    /**
     * Simulated sensor, so this proves the machinery and not the world: 10 degrees of noise, one reading in
     * twenty taken half way to another hold, a yaw drift of one degree a turn.
     */
    @Test
    void shouldReadNearlyEveryHoldWhenASensorDriftsAndTheCubeIsHalfTilted() {
        HoldInference inference = new HoldInference(HoldModel.shipped());
        Random random = new Random(5);
        List<SolveScore> scores = new ArrayList<>();
        for (PublicSolves.Solve solve : PublicSolves.all().subList(0, 20)) {
            HoldExample example = solve.example();
            HoldEvidence sensor = new OrientationEvidence(simulate(example.track(), random), 12);
            scores.add(SolveScore.of(
                    example.track(),
                    inference.infer(
                            new HoldQuestion(example.track().turns(), example.start(), example.hand(), sensor))));
        }

        assertThat(HoldAssessment.of(scores, 1).holdShare().value()).isGreaterThanOrEqualTo(0.995);
    }

    private static List<Quaternion> simulate(HoldTrack track, Random random) {
        List<Quaternion> readings = new ArrayList<>();
        for (int turn = 0; turn < track.size(); turn++) {
            Quaternion noise = Quaternion.about(
                    random.nextGaussian(),
                    random.nextGaussian(),
                    random.nextGaussian(),
                    Math.toRadians(10) * random.nextGaussian());
            Quaternion tilt = random.nextInt(20) == 0 ? Quaternion.about(0, 0, 1, Math.PI / 4) : noise;
            Quaternion drift = Quaternion.about(0, 1, 0, Math.toRadians(turn));
            Quaternion seen = tilt.after(OrientationEvidence.exact(track.holds().get(turn)));
            readings.add(drift.after(noise).after(seen));
        }
        return readings;
    }
}
