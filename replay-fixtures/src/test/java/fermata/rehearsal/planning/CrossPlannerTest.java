package fermata.rehearsal.planning;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.CoreWalk;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.search.Slot;
import fermata.rehearsal.character.Handling;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class CrossPlannerTest {
    /** Depth table "cross HTM" (own breadth-first search, equal to the published cross study of cubezone.be). */
    @Test
    void shouldMatchTheDepthTableWhenThePiecesAreTheCross() {
        assertThat(CrossPlanner.TABLE.counts()).containsExactly(1, 15, 158, 1394, 9809, 46381, 97254, 34966, 102);
    }

    /** Reference table scramble_checks.csv: shortest D cross of 60 scrambles by an independent search. */
    @Test
    void shouldMatchTheScrambleChecksWhenTheCrossIsPlanned() throws IOException {
        CrossPlanner planner = new CrossPlanner(Handling.usual());
        List<String> rows = rows("scramble_checks.csv");
        int column = List.of(rows.get(0).split(",")).indexOf("cross_D_HTM");
        for (String row : rows.subList(1, rows.size())) {
            String[] cells = row.split(",");
            CubeState state = Sequence.parse(cells[0].replace("(empty)", "")).state();
            CoreWalk walk = new Sequence(planner.plan(state).moves()).walk(Orientation.IDENTITY);
            assertThat(walk.turns()).hasSize(Integer.parseInt(cells[column]));
            assertThat(Slot.CROSS.stream().allMatch(state.apply(walk.turns())::isSolved))
                    .isTrue();
            assertThat(walk.end().coreAt(Face.D)).isEqualTo(Face.D);
        }
    }

    private static List<String> rows(String file) throws IOException {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                CrossPlannerTest.class.getResourceAsStream("/fermata/fixtures/reference/" + file),
                StandardCharsets.UTF_8))) {
            return lines.lines().toList();
        }
    }
}
