package fermata.decoder.finding;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.solver.TwoPhaseSolver;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ClosingTurnsTest {
    private static final TwoPhaseSolver SOLVER = new TwoPhaseSolver();

    @Test
    void shouldCountWhatWasTakenOutWhenAListThatClosesLacksTurns() {
        for (int missing = 0; missing <= 3; missing++) {
            List<Turn> turns = closing(20 + missing);
            for (int i = 0; i < missing; i++) {
                turns.remove(7 * i + 3);
            }
            assertThat(ClosingTurns.missing(turns, everywhere(turns), 3)).hasValue(missing);
        }
    }

    @Test
    void shouldNotCloseWhenTurnsWereReadWrongly() {
        for (int seed = 1; seed <= 5; seed++) {
            List<Turn> turns = closing(seed);
            // R and L exchanged throughout, as a wrong table would.
            turns.replaceAll(t -> t.face().ordinal() % 3 == 1 ? Turn.of(t.face().opposite(), t.quarters()) : t);
            turns.set(2, Turn.parse("U"));
            turns.set(5, Turn.parse("F'"));
            assertThat(ClosingTurns.missing(turns, everywhere(turns), 3)).isEmpty();
        }
    }

    @Test
    void shouldLookOnlyAtThePlacesGivenWhenTheStreamTellsWhereTurnsAreMissing() {
        List<Turn> turns = closing(9);
        turns.remove(10);
        assertThat(ClosingTurns.missing(turns, Set.of(10), 4)).hasValue(1);
        assertThat(ClosingTurns.missing(turns, Set.of(0), 1)).isEmpty();
    }

    private static Set<Integer> everywhere(List<Turn> turns) {
        return IntStream.rangeClosed(0, turns.size()).boxed().collect(Collectors.toSet());
    }

    private static List<Turn> closing(long seed) {
        Random random = new Random(seed);
        List<Turn> turns = new ArrayList<>();
        while (turns.size() < 30) {
            Turn next = Turn.ofIndex(random.nextInt(18));
            if (turns.isEmpty()
                    || turns.get(turns.size() - 1).face().axis() != next.face().axis()) {
                turns.add(next);
            }
        }
        turns.addAll(SOLVER.solve(CubeState.SOLVED.apply(turns)));
        return turns;
    }
}
