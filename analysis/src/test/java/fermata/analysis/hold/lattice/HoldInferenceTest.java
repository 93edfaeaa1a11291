package fermata.analysis.hold.lattice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.HandTurn;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.HoldReading;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.IntervalEvidence;
import fermata.analysis.hold.LayerOdds;
import fermata.analysis.hold.PublicSolves;
import fermata.analysis.hold.Writing;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Mirror;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HoldInferenceTest {
    private static final HoldExample SOLVE = PublicSolves.all().get(5).example();

    /** The scrambling hold is the one thing by which colours could matter: without it all 24 namings read alike. */
    @ParameterizedTest
    @ValueSource(ints = {1, 5, 10, 17, 23})
    void shouldReadTheSameHandWhenTheCentresAreNamedOtherwise(int naming) {
        String nameless = HoldModel.shipped()
                .weights()
                .print()
                .lines()
                .filter(line -> !line.contains(" start_hold "))
                .collect(Collectors.joining("\n"));
        HoldInference inference = new HoldInference(
                new HoldModel(HoldWeights.parse(nameless), HoldModel.shipped().book()));
        Orientation other = Orientation.ofIndex(naming);
        List<Turn> renamed = SOLVE.track().turns().stream().map(other::toCore).toList();

        HoldReading one = inference.infer(ofSolve(SOLVE.track().turns(), Hand.LEFT));
        HoldReading two = inference.infer(ofSolve(renamed, Hand.LEFT));

        assertThat(two.logScore()).isCloseTo(one.logScore(), within(1e-6));
        assertThat(two.turns().stream().map(HandTurn::move).toList())
                .isEqualTo(one.turns().stream().map(HandTurn::move).toList());
    }

    @Test
    void shouldReadTheRightHandAsTheLeftOneInTheMirror() {
        HoldInference inference = new HoldInference(HoldModel.shipped());
        List<Turn> turns = SOLVE.track().turns();

        HoldReading left = inference.infer(ofSolve(turns, Hand.LEFT));
        HoldReading right = inference.infer(ofSolve(Mirror.of(turns), Hand.RIGHT));

        assertThat(right.track()).isEqualTo(left.track().mirrored());
        assertThat(right.odds().at(3, Face.L)).isCloseTo(left.odds().at(3, Face.R), within(1e-9));
    }

    /** By the sum rule: nobody has said the hand, and turns alone say nothing of it. */
    @Test
    void shouldBelieveEachHandByItsShareWhenNobodyNamedIt() {
        HoldInference inference = new HoldInference(HoldModel.shipped());
        List<Turn> turns = SOLVE.track().turns();
        LayerOdds any = inference.infer(ofSolve(turns, Hand.UNKNOWN)).odds();
        LayerOdds left = inference.infer(ofSolve(turns, Hand.LEFT)).odds();
        LayerOdds two = inference.infer(ofSolve(turns, Hand.TWO)).odds();
        LayerOdds right = inference.infer(ofSolve(turns, Hand.RIGHT)).odds();

        for (int turn = 0; turn < turns.size(); turn++) {
            for (Face place : Face.values()) {
                double sum = 0.5 * left.at(turn, place) + 0.4 * two.at(turn, place) + 0.1 * right.at(turn, place);
                assertThat(any.at(turn, place)).isCloseTo(sum, within(1e-9));
            }
        }
    }

    /** One hand does not reach the back: common practice, no source. Two-handed solves, read both ways. */
    @Test
    void shouldSeldomReadTheBackLayerInPlaceWhenOneHandTurned() {
        HoldInference inference = new HoldInference(HoldModel.shipped());
        double byOne = 0;
        double byTwo = 0;
        for (PublicSolves.Solve solve : PublicSolves.all()) {
            List<Turn> turns = solve.example().track().turns();
            if (solve.example().hand() == Hand.TWO) {
                byOne += turnsOfTheBack(inference.infer(ofSolve(turns, Hand.LEFT)));
                byTwo += turnsOfTheBack(inference.infer(ofSolve(turns, Hand.TWO)));
            }
        }

        assertThat(byOne).isPositive().isLessThan(byTwo / 2);
    }

    private static double turnsOfTheBack(HoldReading reading) {
        return IntStream.range(0, reading.turns().size())
                .mapToDouble(turn -> reading.odds().at(turn, Face.B))
                .sum();
    }

    /** Evidence that only the right hand's reading fits must tell the hand, however rare right hands are beforehand. */
    @Test
    void shouldTakeTheHandThatTheEvidenceFitsWhenNobodyNamedIt() {
        HoldInference inference = new HoldInference(HoldModel.shipped());
        List<Turn> turns = Mirror.of(SOLVE.track().turns());
        HoldTrack right = inference.infer(ofSolve(turns, Hand.RIGHT)).track();
        HoldEvidence seen = new HoldEvidence() {
            @Override
            public double ofHold(int turn, Orientation hold) {
                return hold == right.holds().get(turn) ? 0 : -8;
            }
        };

        HoldReading told = inference.infer(new HoldQuestion(turns, Mirror.of(SOLVE.start()), Hand.UNKNOWN, seen));

        assertThat(told.track()).isEqualTo(right);
        assertThat(told.turns())
                .allSatisfy(turn -> assertThat(turn.probability()).isGreaterThan(0.9));
    }

    /** Mirrored turns from the mirrored state must solve the cube as the plain ones do. */
    @Test
    void shouldMirrorStatesAsItMirrorsTurns() {
        CubeState mirrored = Mirror.of(SOLVE.start());

        assertThat(mirrored.legality()).isEqualTo(fermata.decoder.cube.Legality.LEGAL);
        assertThat(Mirror.of(CubeState.SOLVED.apply(SOLVE.track().turns())))
                .isEqualTo(CubeState.SOLVED.apply(Mirror.of(SOLVE.track().turns())));
    }

    @Test
    void shouldWriteMovesThatMakeTheTurnsAndHoldsItStates() {
        HoldReading reading = new HoldInference(HoldModel.shipped())
                .infer(ofSolve(SOLVE.track().turns(), Hand.LEFT));
        String written = Writing.text(reading.track());

        HoldTrack again = HoldTrack.of(Sequence.parse(written), Orientation.IDENTITY);
        assertThat(again.turns()).isEqualTo(reading.track().turns());
        for (int turn = 0; turn < again.size(); turn++) {
            assertThat(again.layer(turn)).isEqualTo(reading.track().layer(turn));
        }
    }

    @Test
    void shouldFollowTheEvidenceWhenItIsStrong() {
        HoldTrack truth = HoldTrack.of(Sequence.parse("R U R' y' R U R' z U R U'"), Orientation.of(Face.F, Face.D));
        HoldEvidence told = new HoldEvidence() {
            @Override
            public double ofHold(int turn, Orientation hold) {
                return hold == truth.holds().get(turn) ? 0 : -60;
            }
        };
        HoldReading reading = new HoldInference(HoldModel.shipped())
                .infer(new HoldQuestion(truth.turns(), CubeState.SOLVED, Hand.TWO, told));

        assertThat(reading.track()).isEqualTo(truth);
        assertThat(reading.turns())
                .allSatisfy(turn -> assertThat(turn.probability()).isGreaterThan(0.999));
    }

    @Test
    void shouldTakeALongIntervalForARotationAndAShortOneAgainst() {
        IntervalEvidence evidence = new IntervalEvidence(new long[] {0, 150_000, 160_000, 150_000, 480_000, 140_000});
        Orientation quarter = Orientation.turning(Face.U, 1);

        assertThat(evidence.ofRotation(4, quarter)).isPositive();
        assertThat(evidence.ofRotation(1, quarter)).isNegative();
    }

    @Test
    void shouldNotTakeAShortPauseForTheRotationOfOneWhoNeedsLong() {
        long[] intervals = {0, 150_000, 160_000, 150_000, 450_000, 140_000, 1_300_000};
        IntervalEvidence usual = new IntervalEvidence(intervals);
        IntervalEvidence slow = new IntervalEvidence(intervals, 1_150_000);
        Orientation quarter = Orientation.turning(Face.U, 1);

        assertThat(slow.ofRotation(4, quarter)).isNegative().isLessThan(usual.ofRotation(4, quarter));
        assertThat(slow.ofRotation(6, quarter)).isPositive().isGreaterThan(usual.ofRotation(6, quarter));
    }

    /** A solve that ended solved, without times. */
    private static HoldQuestion ofSolve(List<Turn> turns, Hand hand) {
        return new HoldQuestion(turns, CubeState.SOLVED.apply(turns).inverse(), hand, HoldEvidence.NONE);
    }
}
