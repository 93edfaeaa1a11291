package fermata.analysis.lookahead;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.beat.Beat;
import fermata.analysis.beat.Context;
import fermata.analysis.beat.HoldUp;
import fermata.analysis.beat.Place;
import fermata.analysis.beat.Stretch;
import fermata.analysis.record.StageName;
import fermata.analysis.rest.Cause;
import fermata.analysis.rest.CauseShare;
import fermata.analysis.rest.ExplainedRest;
import fermata.analysis.rhythm.BeatReading;
import fermata.decoder.cube.Face;
import java.util.List;
import org.junit.jupiter.api.Test;

class LookAheadFindingTest {
    @Test
    void shouldCallItAFermataWhenLookingTookLong() {
        LookAheadFinding finding = rested(400_000, 200_000);

        assertThat(finding.isFermata()).isTrue();
        assertThat(finding.probability()).isGreaterThan(0.7);
    }

    /** A rotation took most of the rest; a glance beside it is likely, and no fermata. */
    @Test
    void shouldCallItNoFermataWhenTheCubeWasTurnedAndLookingTookLessThanARest() {
        LookAheadFinding finding = rested(150_000, 450_000);

        assertThat(finding.isFermata()).isFalse();
        assertThat(finding.inTimeProbability()).isGreaterThanOrEqualTo(0.5);
    }

    private static LookAheadFinding rested(double lookingMicros, double rotatingMicros) {
        Beat beat = new Beat(11, 850_000, Context.ADJACENT, new Place(Stretch.PAIR2, HoldUp.PAIR_ROTATION), 0);
        ExplainedRest rest = new ExplainedRest(
                new BeatReading(beat, 0.99, 850_000 - lookingMicros - rotatingMicros, 0.2),
                List.of(
                        new CauseShare(Cause.LOOK_AHEAD, 0.8, lookingMicros),
                        new CauseShare(Cause.ROTATION, 0.97, rotatingMicros)));
        return new LookAheadFinding(
                StageName.PAIR2,
                List.of(Face.F, Face.R),
                12,
                new Outlook.Identifiable(900_000, false),
                rest,
                List.of(),
                0,
                1);
    }
}
