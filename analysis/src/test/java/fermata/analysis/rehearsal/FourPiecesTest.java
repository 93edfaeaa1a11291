package fermata.analysis.rehearsal;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.CoreWalk;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.solver.RandomStates;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FourPiecesTest {
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

    @Test
    void shouldShowTheSameCubeTwiceMirroredWhenMirrored() {
        SplittableRandom random = new SplittableRandom(2);
        for (int round = 0; round < 50; round++) {
            CubeState state = RandomStates.uniform(random);
            CubeState mirrored = Mirror.PRESENT.of(state);
            assertThat(Mirror.PRESENT.of(mirrored)).isEqualTo(state);
            Sequence words = Sequence.parse("R U' r F2 y D u' x L' B z' f");
            Sequence mirroredWords =
                    new Sequence(words.moves().stream().map(Mirror.PRESENT::of).toList());
            CubeState after = state.apply(words.walk(Orientation.IDENTITY).turns());
            assertThat(mirrored.apply(mirroredWords.walk(Orientation.IDENTITY).turns()))
                    .isEqualTo(Mirror.PRESENT.of(after));
        }
    }

    private static List<String> rows(String file) throws IOException {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                FourPiecesTest.class.getResourceAsStream("/fermata/fixtures/reference/" + file),
                StandardCharsets.UTF_8))) {
            return lines.lines().toList();
        }
    }
}
