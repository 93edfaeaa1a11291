package fermata.analysis.hold.sequence;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.event.Hand;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.HoldExample;
import fermata.analysis.hold.HoldQuestion;
import fermata.analysis.hold.HoldReading;
import fermata.analysis.hold.HoldTrack;
import fermata.analysis.hold.PublicSolves;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.decoder.cube.CubeState;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SequenceBookTest {
    /** Turned by the front where everybody turns it by the right; made up. */
    private static final String ODD = "F U F' U F U2 F'";

    /** Whichever hand turned it, and however the solve began: what is typed is what was turned. */
    @ParameterizedTest
    @CsvSource({"LEFT, 7", "LEFT, 16", "RIGHT, 7", "TWO, 3", "UNKNOWN, 20"})
    void shouldReadALastLayerAsItsSolverTypedIt(Hand hand, int begun) {
        HoldTrack track = HoldTrack.of(Sequence.parse(ODD), Orientation.ofIndex(begun));
        CubeState start = CubeState.SOLVED.apply(track.turns()).inverse();
        HoldEvidence typed = SequenceBook.parse(ODD).evidence(start, track.turns());
        HoldInference inference = new HoldInference(HoldModel.shipped());

        HoldReading knowing = inference.infer(new HoldQuestion(track.turns(), start, hand, typed));
        HoldReading ignorant = inference.infer(new HoldQuestion(track.turns(), start, hand, HoldEvidence.NONE));

        assertThat(knowing.track().holds()).isEqualTo(track.holds());
        assertThat(ignorant.track().holds()).isNotEqualTo(track.holds());
    }

    @Test
    void shouldForgiveATurnThatRanTogetherWithAnAdjustmentAndNoMore() {
        SequenceBook own = SequenceBook.parse("R U R' U R U2 R' U");
        Orientation plain = Orientation.IDENTITY;

        HoldEvidence endedOtherwise = of(own, "R U R' U R U2 R' U2");
        HoldEvidence another = of(own, "R U R' U R U' R' U R U2 R'");

        assertThat(endedOtherwise.ofHold(3, plain)).isPositive();
        assertThat(endedOtherwise.ofHold(7, plain)).isZero();
        assertThat(another.ofHold(3, plain)).isZero();
        assertThat(of(SequenceBook.EMPTY, ODD)).isSameAs(HoldEvidence.NONE);
    }

    private static HoldEvidence of(SequenceBook own, String words) {
        HoldTrack track = HoldTrack.of(Sequence.parse(words), Orientation.IDENTITY);
        return own.evidence(CubeState.SOLVED.apply(track.turns()).inverse(), track.turns());
    }

    /** The last layer of a public solve, seen from the hold in which it was begun, whatever that was. */
    @Test
    void shouldTakeTheLastLayerOfASolveThatItsSolverSetRight() {
        HoldExample solve = PublicSolves.all().get(5).example();

        List<String> learned = SequenceBook.ofLastLayer(solve.start(), solve.track())
                .print()
                .lines()
                .toList();

        assertThat(learned).hasSize(1);
        HoldTrack again = HoldTrack.of(Sequence.parse(learned.get(0)), Orientation.IDENTITY);
        int from = solve.track().size() - again.size();
        assertThat(again.turns())
                .isEqualTo(solve.track().turns().subList(from, solve.track().size()).stream()
                        .map(solve.track().holds().get(from)::toHand)
                        .toList());
        HoldEvidence itself = SequenceBook.ofLastLayer(solve.start(), solve.track())
                .evidence(solve.start(), solve.track().turns());
        assertThat(itself.ofHold(from, solve.track().holds().get(from))).isPositive();
        assertThat(itself.ofHold(0, solve.track().holds().get(0))).isZero();
    }
}
