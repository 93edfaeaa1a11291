package fermata.analysis.hold;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.hold.sequence.StreamFacts;
import fermata.analysis.method.MethodReader;
import fermata.analysis.method.Reconstruction;
import fermata.analysis.method.StageMark;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The public reconstructions: their stages as they are shown, and the lines in which their writers made a pair. */
class StreamFactsTest {
    /** While a cross stands off its centres, the first pair is shown as begun; to the holds it is the cross yet. */
    @Test
    void shouldFindTheSamePairAtWorkAsTheStagesThatAreShown() {
        int compared = 0;
        for (Reconstruction solve : Reconstruction.all()) {
            StreamFacts facts = new StreamFacts(solve.start(), solve.turns());
            for (StageMark stage :
                    MethodReader.read(solve.start(), solve.turns()).stages()) {
                boolean isPair = stage.name().name().startsWith("PAIR");
                for (int turn = stage.span().from();
                        isPair && turn < stage.span().to();
                        turn++) {
                    if (facts.phase(turn) != StreamFacts.Phase.CROSS) {
                        compared++;
                        assertThat(facts.slot(turn))
                                .as("%s, turn %d", solve.id(), turn)
                                .isNotNull();
                        assertThat(facts.slot(turn).faces())
                                .as("%s, turn %d", solve.id(), turn)
                                .contains(facts.crossFace)
                                .containsAll(stage.faces());
                    }
                }
            }
        }
        assertThat(compared).isGreaterThan(2_000);
    }

    /**
     * A line is of use where one pair stands at its end that did not at its beginning. What is left is a matter of
     * taste: two pairs made at once (p046, p060), a line that ends in the middle of a pair or behind it (p110, p121,
     * p154).
     */
    @Test
    void shouldNameThePairThatTheWriterMadeThroughoutTheLine() {
        Set<String> otherwise = new LinkedHashSet<>();
        int lines = 0;
        for (Reconstruction solve : Reconstruction.all()) {
            StreamFacts facts = new StreamFacts(solve.start(), solve.turns());
            for (Reconstruction.Line line : solve.lines()) {
                List<Corner> made = line.stage().startsWith("pair") ? made(solve, line, facts.crossFace) : List.of();
                if (made.size() == 1) {
                    lines++;
                    boolean right = IntStream.range(line.from(), line.to())
                            .allMatch(turn -> Objects.equals(facts.slot(turn), made.get(0)));
                    if (!right) {
                        otherwise.add(solve.id());
                    }
                }
            }
        }
        assertThat(lines).isEqualTo(495);
        assertThat(otherwise).containsExactly("p046", "p060", "p110", "p121", "p154");
    }

    private static List<Corner> made(Reconstruction solve, Reconstruction.Line line, Face cross) {
        CubeState before = solve.start().apply(solve.turns().subList(0, line.from()));
        CubeState after = before.apply(solve.turns().subList(line.from(), line.to()));
        List<Corner> made = new ArrayList<>();
        for (Corner corner : Corner.values()) {
            if (corner.touches(cross) && stands(after, corner, cross) && !stands(before, corner, cross)) {
                made.add(corner);
            }
        }
        return made;
    }

    private static boolean stands(CubeState state, Corner corner, Face cross) {
        return state.isSolved(corner)
                && List.of(Edge.values()).stream()
                        .filter(edge ->
                                !edge.touches(cross) && edge.faces().stream().allMatch(corner::touches))
                        .allMatch(state::isSolved);
    }
}
