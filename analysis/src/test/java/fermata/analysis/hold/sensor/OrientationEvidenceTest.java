package fermata.analysis.hold.sensor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.PublicSolves;
import fermata.analysis.hold.assessment.HoldAssessment;
import fermata.analysis.hold.assessment.SolveScore;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.orientation.Quaternion;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class OrientationEvidenceTest {
    /** Any two holds are 0, 90, 120 or 180 degrees apart, as the rotations of a cube are. */
    @Test
    void shouldSetTheHoldsApartByTheAnglesOfTheRotationGroup() {
        int[] count = new int[181];
        for (Orientation hold : Orientation.all()) {
            double degrees = Math.toDegrees(SensedHold.exact(hold.index()).angle());
            count[(int) Math.round(degrees)]++;
            assertThat(degrees).isCloseTo(Math.rint(degrees), within(1e-6));
        }
        assertThat(new int[] {count[0], count[90], count[120], count[180]}).containsExactly(1, 6, 8, 9);
    }

    /**
     * Simulated sensor, so this proves the machinery and not the world: 10 degrees of noise, one reading in
     * twenty taken half way to another hold, a yaw drift of one degree a turn from a north that nobody knows.
     */
    @Test
    void shouldReadNearlyEveryHoldWhenASensorDriftsAndTheCubeIsHalfTilted() {
        HoldInference inference = new HoldInference(HoldModel.shipped());
        Random random = new Random(5);
        List<SolveScore> scores = new ArrayList<>();
        for (PublicSolves.Solve solve : PublicSolves.all().subList(0, 20)) {
            HoldExample example = solve.example();
            List<Optional<Quaternion>> samples = simulate(example.track(), random);
            long[] micros = LongStream.range(0, samples.size())
                    .map(turn -> 400_000 * turn)
                    .toArray();
            HoldEvidence sensor = OrientationEvidence.of(example.track().turns(), micros, samples);
            scores.add(SolveScore.of(
                    example.track(),
                    inference.infer(
                            new HoldQuestion(example.track().turns(), example.start(), example.hand(), sensor))));
        }

        assertThat(HoldAssessment.of(scores, 1).holdShare().value()).isGreaterThanOrEqualTo(0.995);
    }

    /** With every sample missing there is nothing to join; with one missing the others still tell. */
    @Test
    void shouldSayNothingWhereThereIsNoSample() {
        List<Turn> turns = List.of(Turn.parse("R"), Turn.parse("U"), Turn.parse("F"));
        Optional<Quaternion> upright = Optional.of(Quaternion.NONE);

        assertThat(OrientationEvidence.of(
                        turns, new long[3], List.of(Optional.empty(), Optional.empty(), Optional.empty())))
                .isSameAs(HoldEvidence.NONE);
        HoldEvidence some = OrientationEvidence.of(
                turns, new long[] {0, 300_000, 600_000}, List.of(upright, Optional.empty(), upright));
        HoldEvidence first = some.assumptions().get(0);
        double[] missing = Orientation.all().stream()
                .mapToDouble(hold -> first.ofHold(1, hold))
                .distinct()
                .toArray();
        assertThat(missing).hasSize(1);
        assertThat(some.assumptions()).hasSize(4);
    }

    /** The four assumptions are one reading seen from four sides: y turns the one into the next. */
    @Test
    void shouldLeaveOpenWhichQuarterIsNorth() {
        List<Turn> turns = List.of(Turn.parse("R"), Turn.parse("U"), Turn.parse("R'"));
        Optional<Quaternion> sample = Optional.of(Quaternion.about(0, 1, 0, 0.3));

        List<HoldEvidence> open = OrientationEvidence.of(
                        turns, new long[] {0, 300_000, 600_000}, List.of(sample, sample, sample))
                .assumptions();

        for (int quarters = 0; quarters < 4; quarters++) {
            for (Orientation hold : Orientation.all()) {
                Orientation turned = hold.then(Orientation.turning(Face.U, quarters));
                assertThat(open.get(quarters).ofHold(1, hold))
                        .isEqualTo(open.get(0).ofHold(1, turned));
            }
        }
        Orientation likeliest = Orientation.all().stream()
                .max(Comparator.comparingDouble(hold -> open.get(0).ofHold(1, hold)))
                .orElseThrow();
        assertThat(likeliest.coreAt(Face.U)).isEqualTo(Face.U);
    }

    private static List<Optional<Quaternion>> simulate(HoldTrack track, Random random) {
        List<Optional<Quaternion>> readings = new ArrayList<>();
        double north = random.nextDouble() * 2 * Math.PI;
        for (int turn = 0; turn < track.size(); turn++) {
            Quaternion noise = Quaternion.about(
                    random.nextGaussian(),
                    random.nextGaussian(),
                    random.nextGaussian(),
                    Math.toRadians(10) * random.nextGaussian());
            Quaternion tilt = random.nextInt(20) == 0 ? Quaternion.about(0, 0, 1, Math.PI / 4) : noise;
            Quaternion drift = Quaternion.about(0, 1, 0, north + Math.toRadians(turn));
            Quaternion seen =
                    tilt.after(SensedHold.exact(track.holds().get(turn).index()));
            readings.add(Optional.of(drift.after(noise).after(seen)));
        }
        return readings;
    }
}
