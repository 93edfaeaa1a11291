package fermata.analysis.hand;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.event.Hand;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.hold.lattice.HoldInference;
import fermata.analysis.hold.lattice.HoldModel;
import fermata.analysis.hold.learning.HoldHabits;
import fermata.analysis.method.Reconstruction;
import fermata.analysis.rest.Performed;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.rehearsal.character.CuberStyle;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The public solves by CFOP, a turn every quarter of a second but where two faces across from each other turn. */
class QuickSlicesTest {
    private static final long BEAT_MICROS = 250_000;
    private static final HandReader READER = new HandReader(new HoldInference(HoldModel.shipped()));

    @Test
    void shouldReadSlicesWhenBothFacesMoveAtOnce() {
        assertThat(slices(30_000)).isGreaterThanOrEqualTo(10);
    }

    @Test
    void shouldReadNoSliceWhenTheFacesMoveOneAfterTheOther() {
        assertThat(slices(160_000)).isZero();
    }

    private static long slices(long acrossMicros) {
        return Reconstruction.all().stream()
                .filter(solve -> solve.method().equals("CFOP"))
                .map(solve -> timed(solve, acrossMicros))
                .map(solve -> READER.read(solve.record(), HoldHabits.NONE, HoldEvidence.NONE)
                        .orElseThrow())
                .flatMap(reading -> reading.turns().stream())
                .filter(turn -> turn.move() instanceof Move.SliceTurn)
                .count();
    }

    private static Performed timed(Reconstruction solve, long acrossMicros) {
        List<Turn> turns = solve.turns();
        List<Long> at = new ArrayList<>(List.of(0L));
        for (int turn = 1; turn < turns.size(); turn++) {
            boolean isAcross =
                    turns.get(turn).face() == turns.get(turn - 1).face().opposite();
            at.add(at.get(turn - 1) + (isAcross ? acrossMicros : BEAT_MICROS));
        }
        HandFacts nothing = new HandFacts(Hand.TWO, false, List.of());
        return new Performed(CuberStyle.cook(), 0, solve.start(), turns, at, nothing, List.of());
    }
}
