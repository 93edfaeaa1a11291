package fermata.analysis.hand;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.hold.HoldEvidence;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class HabitsTest {
    private static final List<Turn> TURNS = StatedHandTest.turns("R U R' U'");

    /** Three solves begun with D up where U was inferred: ratios (3 + 1) / (0 + 1) and (0 + 1) / (3 + 1). */
    @Test
    void shouldTeachByCountsWithPseudoCountsWhenSolvesWereCorrected() {
        Habits habits = Habits.learn(Collections.nCopies(3, corrected("R U R' U'", "x2 R D R' D'")));

        HoldEvidence evidence = habits.evidence(TURNS);
        Orientation upsideDown = Orientation.of(Face.D, Face.B);
        // Turn 0 is R, seen at R in both holds: no layer was corrected there, only U to D on the others.
        assertThat(evidence.ofHold(0, upsideDown)).isCloseTo(Math.log(4), within(1e-12));
        assertThat(evidence.ofHold(0, Orientation.IDENTITY)).isCloseTo(-Math.log(4), within(1e-12));
        // Turn 1 is U: six were seen at D that were inferred at U; 30 pseudo-counts.
        assertThat(evidence.ofHold(1, upsideDown)).isCloseTo(Math.log(36.0 / 30), within(1e-12));
        assertThat(evidence.ofHold(1, Orientation.IDENTITY)).isCloseTo(Math.log(30.0 / 36), within(1e-12));
        assertThat(evidence.ofRotation(1, Orientation.turning(Face.U, 1))).isZero();
    }

    @Test
    void shouldTeachNothingWhereTheInferenceWasRight() {
        HoldEvidence evidence = Habits.learn(Collections.nCopies(9, corrected("R U R' U'", "R U R' U'")))
                .evidence(TURNS);

        for (Orientation hold : Orientation.all()) {
            assertThat(evidence.ofHold(0, hold)).isZero();
            assertThat(evidence.ofRotation(2, hold)).isZero();
        }
    }

    @Test
    void shouldLearnRotationsThatWereNotInferred() {
        HoldEvidence evidence = Habits.learn(Collections.nCopies(4, corrected("R U R' U'", "R z R z' R' U'")))
                .evidence(TURNS);

        assertThat(evidence.ofRotation(1, Orientation.turning(Face.F, 1))).isCloseTo(Math.log(2), within(1e-12));
    }

    @Test
    void shouldNeverBeCertainHoweverOftenItWasTaught() {
        HoldEvidence evidence = Habits.learn(Collections.nCopies(10_000, corrected("R U R' U'", "x2 R D R' D'")))
                .evidence(TURNS);

        assertThat(evidence.ofHold(1, Orientation.of(Face.D, Face.B))).isEqualTo(2);
        assertThat(Habits.NONE.isNone()).isTrue();
        assertThat(Habits.learn(List.of())).isSameAs(Habits.NONE);
    }

    private static Habits.Corrected corrected(String inferred, String stated) {
        return new Habits.Corrected(TURNS, reading(inferred), reading(stated));
    }

    private static HandReading reading(String words) {
        return ((StatedHand.Agrees) StatedHand.of(Sequence.parse(words), TURNS)).reading();
    }
}
