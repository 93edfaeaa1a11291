package fermata.analysis.rhythm;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.record.SolveRecord;
import fermata.analysis.rest.Performed;
import fermata.analysis.rest.RestReader;
import fermata.analysis.rest.RestScore;
import fermata.analysis.rest.Rhythm;
import fermata.decoder.cube.Face;
import fermata.decoder.orientation.Orientation;
import fermata.rehearsal.character.CuberStyle;
import java.util.List;
import org.junit.jupiter.api.Test;

class RotationEvidenceTest {
    private static final Orientation ANY = Orientation.turning(Face.U, 1);

    @Test
    void shouldSpeakForRotationsWhereTheyWereAndAgainstThemElsewhere() {
        List<Performed> solves = Performed.evening(CuberStyle.cook(), 3, 30);
        RestSnapshot yesterday = RestReader.learn(RestScore.practiced(solves, false), Rhythm.coldStart())
                .beats();
        double with = 0;
        int rotations = 0;
        double without = 0;
        int others = 0;
        for (Performed solve : solves) {
            SolveRecord record = solve.record();
            RotationEvidence evidence =
                    RotationEvidence.of(record, solve.facts().hand(), yesterday);
            for (int turn = 1; turn < solve.turns().size(); turn++) {
                boolean isRotated = solve.facts().turns().get(turn).rotationProbability() > 0.5;
                with += isRotated ? evidence.ofRotation(turn, ANY) : 0;
                rotations += isRotated ? 1 : 0;
                without += isRotated ? 0 : evidence.ofRotation(turn, ANY);
                others += isRotated ? 0 : 1;
            }
        }

        assertThat(rotations).isGreaterThan(20);
        assertThat(with / rotations).isGreaterThan(0.5);
        assertThat(without / others).isLessThan(-0.5);
    }
}
