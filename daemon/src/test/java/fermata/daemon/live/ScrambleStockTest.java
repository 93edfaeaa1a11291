package fermata.daemon.live;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.daemon.cli.CommandRig;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Legality;
import fermata.decoder.solver.RandomStates;
import fermata.decoder.solver.TwoPhaseSolver;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Semaphore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class ScrambleStockTest {
    private static final Scramble ANY = HandDriven.scramble("R U F");

    @Test
    void shouldNeverWaitAndMakeMoreWhenFewAreLeft() throws Exception {
        Semaphore asked = new Semaphore(0);
        Semaphore allowed = new Semaphore(0);
        try (ScrambleStock stock = ScrambleStock.start(count -> {
            asked.release();
            allowed.acquireUninterruptibly();
            return Collections.nCopies(count, ANY);
        })) {
            asked.acquire();
            assertThat(stock.next()).isEmpty();
            allowed.release();
            int got = 0;
            while (got < ScrambleStock.BATCH - ScrambleStock.FEW) {
                got += stock.next().isPresent() ? 1 : 0;
                Thread.onSpinWait();
            }
            asked.acquire();

            // While the next batch is being made the rest of this one is handed out.
            for (int left = 0; left < ScrambleStock.FEW; left++) {
                assertThat(stock.next()).isEqualTo(Optional.of(ANY));
            }
            assertThat(stock.next()).isEmpty();
            allowed.release();
        }
    }

    @Test
    void shouldHaveScramblesToLegalStatesMadeByAProcessOfItsOwn() {
        List<Scramble> made = ScrambleProcess.make(6);

        Set<CubeState> states = new HashSet<>();
        for (Scramble scramble : made) {
            CubeState state = CubeState.SOLVED.apply(scramble.turns());
            states.add(state);
            assertThat(state.legality()).isEqualTo(Legality.LEGAL);
            // WCA Regulations 4b3 (2024-01-01): at least two moves to solve.
            assertThat(RandomStates.isWithinOneTurn(state)).isFalse();
            assertThat(scramble.turns()).hasSizeLessThanOrEqualTo(TwoPhaseSolver.LONGEST);
        }
        assertThat(states).hasSize(6);
    }

    @Test
    void shouldRefuseACountThatIsNone() {
        CommandRig.Outcome outcome = CommandRig.runPlain("", "scramble", "--count=0");

        assertThat(outcome.code()).isEqualTo(2);
        assertThat(outcome.err()).contains("--count 0 is not in 1..1000");
    }
}
