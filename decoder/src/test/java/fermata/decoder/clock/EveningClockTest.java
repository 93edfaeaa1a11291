package fermata.decoder.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.decoder.clock.SyntheticLink.Run;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Evenings of eight solves in one connection, with breaks between them: one clock that nobody sets is one epoch. */
class EveningClockTest {
    private static final int SOLVES = 8;
    /** Turns further apart than this are no interval within a solve. */
    private static final long WITHIN_A_SOLVE_MICROS = 2_000_000;

    /** Shares of notifications lost and sent again, and of those that a slow host keeps. */
    private enum Air {
        QUIET(0, 0),
        USUAL(0.1, 0.02),
        POOR(0.3, 0.1);

        private final double loss;
        private final double late;

        Air(double loss, double late) {
            this.loss = loss;
            this.late = late;
        }
    }

    /**
     * Of 300 such connections 182 had a false epoch (45 to 180 s, 45 ms, 30 ppm, nothing lost) while the line was
     * compared as if the turns lay evenly, and intervals across its border were wrong by 29 ms in the median and 80 ms
     * at most. 0.41 ms is what counting whole milliseconds costs: 1 / sqrt(6).
     */
    @Tag("sweep")
    @ParameterizedTest
    @CsvSource({
        // connections, interval us, ppm, wander ppm, air, break of s to s
        "300, 45000, 30, 1, QUIET, 45, 180",
        "40, 45000, -100, 1, QUIET, 45, 180",
        "40, 45000, 100, 1, USUAL, 5, 1200",
        "40, 45000, 100, 1, POOR, 15, 45",
        "40, 45000, 0, 1, QUIET, 600, 1200",
        "40, 45000, 30, 5, QUIET, 5, 1200",
        "40, 30000, 30, 1, QUIET, 180, 600",
        "40, 15000, 30, 1, QUIET, 180, 600",
        "40, 7500, 30, 1, POOR, 45, 180",
        "40, 60000, 100, 1, USUAL, 600, 1200"
    })
    void shouldHearOneEpochWhenTheCubeOnlyLayForAWhile(
            int connections, double interval, double ppm, double wander, Air air, double from, double to) {
        SyntheticLink link = new SyntheticLink(0, interval, ppm, wander, air.loss, air.late, 1000);
        int withFalseEpochs = 0;
        double squares = 0;
        int intervals = 0;
        for (int seed = 1; seed <= connections; seed++) {
            Run run = link.evening(seed, SOLVES, from, to);
            List<TurnClock> epochs = new ArrayList<>();
            double[] errors = errorMillis(run, epochs);
            withFalseEpochs += epochs.size() > 1 ? 1 : 0;
            for (int turn = 1; turn < errors.length; turn++) {
                if (run.truthMicros()[turn] - run.truthMicros()[turn - 1] < WITHIN_A_SOLVE_MICROS) {
                    squares += Math.pow(errors[turn] - errors[turn - 1], 2);
                    intervals++;
                }
            }
        }

        assertThat(withFalseEpochs).as("of %d connections", connections).isZero();
        assertThat(Math.sqrt(squares / intervals)).isCloseTo(1 / Math.sqrt(6), within(0.02));
    }

    /** The same on a few evenings, for whoever alters the clock many times. */
    @Test
    void shouldHearOneEpochInAFewEvenings() {
        shouldHearOneEpochWhenTheCubeOnlyLayForAWhile(6, 45_000, 30, 1, Air.QUIET, 45, 180);
    }

    /** Of each turn how far it is put from the truth, by the clock of its epoch. */
    private static double[] errorMillis(Run run, List<TurnClock> epochs) {
        int[] epochOf = new int[run.deviceMicros().length];
        epochs.add(new TurnClock(SyntheticLink.START_MICROS));
        for (int turn = 0; turn < epochOf.length; turn++) {
            TurnClock clock = epochs.get(epochs.size() - 1);
            if (clock.isTooEarly(run.deviceMicros()[turn], run.arrivalMicros()[turn])) {
                clock = new TurnClock(run.arrivalMicros()[turn]);
                epochs.add(clock);
            }
            clock.add(run.deviceMicros()[turn], run.arrivalMicros()[turn]);
            epochOf[turn] = epochs.size() - 1;
        }
        List<ClockFit> fits =
                epochs.stream().map(clock -> clock.fit().orElseThrow()).toList();
        double[] errors = new double[epochOf.length];
        for (int turn = 0; turn < errors.length; turn++) {
            long mapped = fits.get(epochOf[turn]).boardMicros(run.deviceMicros()[turn]);
            errors[turn] = (mapped - run.truthMicros()[turn]) / 1000.0;
        }
        return errors;
    }

    /** Set while the cube lay, and in the middle of a solve; what is sought is a verdict within 50 turns. */
    @Tag("sweep")
    @ParameterizedTest
    @CsvSource({
        "2, 0, 100000, 15, 45",
        "4, 0, 100000, 45, 180",
        "2, 60, 100000, 45, 180",
        "6, 0, 50000, 45, 180",
        "4, 0, 100000, 600, 1200",
        "2, 60, 1000000, 600, 1200"
    })
    void shouldFindAClockThatWasSetForwardWhenThereAreBreaks(
            int afterSolves, int turnOfTheNext, long jumpMicros, double from, double to) {
        SyntheticLink link = new SyntheticLink(0, 45_000, 30, 1, 0, 0, 1000);
        for (int seed = 1; seed <= 50; seed++) {
            Run run = link.evening(seed, SOLVES, from, to);
            int set = firstTurnAfter(run, afterSolves, from) + turnOfTheNext;
            TurnClock clock = new TurnClock(SyntheticLink.START_MICROS);
            boolean isFound = false;
            for (int turn = 0; turn < set + 50 && !isFound; turn++) {
                long device = run.deviceMicros()[turn] + (turn < set ? 0 : jumpMicros);
                isFound = clock.isTooEarly(device, run.arrivalMicros()[turn]);
                assertThat(isFound && turn < set)
                        .as("seed %d, turn %d", seed, turn)
                        .isFalse();
                clock.add(device, run.arrivalMicros()[turn]);
            }
            assertThat(isFound).as("seed " + seed).isTrue();
        }
    }

    private static int firstTurnAfter(Run run, int solves, double breakSeconds) {
        int breaks = 0;
        int turn = 0;
        while (breaks < solves) {
            turn++;
            breaks += run.truthMicros()[turn] - run.truthMicros()[turn - 1] >= breakSeconds * 1e6 ? 1 : 0;
        }
        return turn;
    }
}
