package fermata.analysis.load;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LoadLedgerTest {
    private static final long MINUTE = 60_000_000;

    @Test
    void shouldAddUpTurnsRegripsAndMinutesWhenSolvesFollowEachOther() {
        HandLoad load = loadOf(0, 2, 4);

        assertThat(load.solves()).isEqualTo(3);
        assertThat(load.turns()).isEqualTo(180);
        assertThat(load.regrips()).isCloseTo(4.5, within(1e-9));
        assertThat(load.turningMinutes()).isCloseTo(3 * 0.5, within(1e-9));
        assertThat(load.longestMinutes()).isCloseTo(4 + 0.5, within(1e-9));
        assertThat(load.advice()).containsExactly(HandLoad.Advice.STOP_WHEN_IT_HURTS);
    }

    @Test
    void shouldBeginANewStretchAfterABreakOfFiveMinutes() {
        // 3.5 to 8 is a pause of 4.5 minutes, 8.5 to 13.5 one of 5.
        assertThat(loadOf(0, 3, 8).longestMinutes()).isCloseTo(8.5, within(1e-9));
        assertThat(loadOf(0, 3, 8, 13.5).longestMinutes()).isCloseTo(8.5, within(1e-9));
        assertThat(loadOf(0, 6, 9).longestMinutes()).isCloseTo(3.5, within(1e-9));
    }

    /** HSE guidance L26: 5 to 10 minutes after 50 to 60. */
    @Test
    void shouldSuggestShortBreaksFromFiftyMinutesOn() {
        assertThat(loadOf(evenly(3, 48)).advice()).containsExactly(HandLoad.Advice.STOP_WHEN_IT_HURTS);
        assertThat(loadOf(evenly(3, 51)).advice())
                .containsExactly(HandLoad.Advice.TAKE_SHORT_BREAKS, HandLoad.Advice.STOP_WHEN_IT_HURTS);
    }

    private static double[] evenly(int step, int last) {
        double[] minutes = new double[last / step + 1];
        for (int index = 0; index < minutes.length; index++) {
            minutes[index] = index * step;
        }
        return minutes;
    }

    /** Solves of half a minute, 60 turns and one and a half regrips. */
    private static HandLoad loadOf(double... startMinutes) {
        LoadLedger ledger = new LoadLedger();
        for (double start : startMinutes) {
            ledger.add(Math.round(start * MINUTE), MINUTE / 2, 60, 1.5);
        }
        return ledger.load();
    }
}
