package fermata.decoder.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.decoder.clock.ClockFit.Quality;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The line on small epochs whose figures are worked out by hand: every other turn late by the same time. */
class TurnClockLineTest {
    private static final long SECOND = 1_000_000;

    /** Turns a second apart, the odd ones late by {@code lateMicros}: half of that is their mean delay. */
    private static TurnClock clock(int turns, double skewPpm, long lateMicros) {
        TurnClock clock = new TurnClock(0);
        for (int turn = 0; turn < turns; turn++) {
            long device = (10 + turn) * SECOND;
            clock.add(device, board(device, skewPpm) + (turn % 2 == 0 ? 0 : lateMicros));
        }
        return clock;
    }

    private static long board(long deviceMicros, double skewPpm) {
        return deviceMicros + Math.round(deviceMicros * skewPpm * 1e-6);
    }

    /**
     * 200 turns from 10 s to 209 s, mean 109.5 s; those beyond it lie 1/2 + 3/2 + .. + 199/2 = 5000 s from it in all.
     * With a mean delay of 20 ms (two points given away: 20.202 ms) the line may be too high by 14 * 2 * 20.202 ms *
     * distance / 5000 s with a chance of one in a million: 22.627 ms at 200 s beyond the mean. A crystal that warms
     * adds 10 ppm of the 100.5 s since the last turn: 1.005 ms. At the last turn, 99.5 s beyond the mean, it is
     * 11.257 ms. With a mean
     * delay of 2 ms the bound is that of 5 ms.
     */
    @ParameterizedTest
    @CsvSource({
        // late us, device us, earlier than the line by us, too early
        "40000, 309500000, 23630, false",
        "40000, 309500000, 23635, true",
        "40000, 209000000, 11255, false",
        "40000, 209000000, 11262, true",
        "4000, 209000000, 5000, false",
        "4000, 209000000, 5002, true",
    })
    void shouldCallAnArrivalTooEarlyWhenChanceExplainsItOnceInAMillion(
            long lateMicros, long deviceMicros, long earlierMicros, boolean expected) {
        for (double skewPpm : new double[] {0, 100, -100}) {
            TurnClock clock = clock(200, skewPpm, lateMicros);

            assertThat(clock.isTooEarly(deviceMicros, board(deviceMicros, skewPpm) - earlierMicros))
                    .as("%f ppm", skewPpm)
                    .isEqualTo(expected);
        }
    }

    /** Twenty turns over one minute are the least that a verdict needs. */
    @ParameterizedTest
    @CsvSource({"20, 60000000, true", "19, 60000000, false", "20, 59999999, false"})
    void shouldGiveNoVerdictBeforeEnoughIsKnown(int turns, long spanMicros, boolean expected) {
        TurnClock clock = new TurnClock(0);
        for (int turn = 0; turn < turns; turn++) {
            long device = 5 * SECOND + spanMicros * turn / (turns - 1);
            clock.add(device, device);
        }

        assertThat(clock.isTooEarly(66 * SECOND, 60 * SECOND)).isEqualTo(expected);
        assertThat(clock.fit().orElseThrow().quality()).isEqualTo(expected ? Quality.HULL : Quality.UNIT_SKEW);
    }

    /**
     * 100 turns over 99 s, mean delay 20 ms: the smallest of 50 delays is 2 * 20 / 50 = 0.8 ms, the halves lie 49.5 s
     * apart, doubled: a standard error of 32.32 ppm. Two clocks differ by 50 ppm as a rule, so of a skew 50^2 / (50^2 +
     * 32.32^2) = 0.7053 is kept, if it lies within 200 + 4 * 32.32 = 329.3 ppm.
     */
    @ParameterizedTest
    @CsvSource({
        "100, 70.53, HULL",
        "-100, -70.53, HULL",
        "280, 197.48, HULL",
        "-280, -197.48, HULL",
        "300, 211.59, SKEW_SUSPECT",
        "328, 231.33, SKEW_SUSPECT",
        "331, 331, SKEW_SUSPECT",
        "-331, -331, SKEW_SUSPECT"
    })
    void shouldDrawTheSkewTowardsNoneByAsMuchAsTheDelaysLeaveItOpen(double skewPpm, double expected, Quality quality) {
        ClockFit fit = clock(100, skewPpm, 40_000).fit().orElseThrow();

        assertThat(fit.skewPpm()).isCloseTo(expected, within(0.2));
        assertThat(fit.quality()).isEqualTo(quality);
        assertThat(fit.pivotMicros()).isEqualTo(59_500_000);
        assertThat(fit.points()).isEqualTo(100);
    }

    /** A line of 70.53 ppm under points of 100 ppm touches the first of them: 49.5 s * 29.47 ppm = 1.459 ms lower. */
    @Test
    void shouldTouchAnArrivalAndPassNoneWhenTheSkewIsDrawnTowardsNone() {
        ClockFit fit = clock(100, 100, 40_000).fit().orElseThrow();

        assertThat(fit.boardMicros(10 * SECOND)).isEqualTo(board(10 * SECOND, 100));
        assertThat(board(108 * SECOND, 100) - fit.boardMicros(108 * SECOND)).isCloseTo(2_888, within(20L));
        // Ranks 50 and 99 of 100: the last of those in time, and the last but one of the late ones.
        assertThat(fit.residualP50Micros()).isCloseTo(2_888, within(20.0));
        assertThat(fit.residualP99Micros()).isCloseTo(40_000 + 97 * 29.47, within(20.0));
    }

    @Test
    void shouldSayHowLateTheTurnsAreWhenTheEpochIsShort() {
        TurnClock clock = new TurnClock(0);
        for (int turn = 0; turn < 10; turn++) {
            clock.add(10 * SECOND + turn, 10 * SECOND + turn + 7_000 + 1_000L * turn);
        }

        ClockFit fit = clock.fit().orElseThrow();

        assertThat(fit.quality()).isEqualTo(Quality.UNIT_SKEW);
        assertThat(fit.offsetMicros()).isEqualTo(7_000);
        assertThat(fit.skewPpm()).isZero();
        assertThat(fit.residualP50Micros()).as("rank 5 of 10").isEqualTo(4_000);
        assertThat(fit.residualP99Micros()).as("rank 10 of 10").isEqualTo(9_000);
    }

    @Test
    void shouldLeaveOutTheFirstFiveSecondsAndWhatFallsBack() {
        TurnClock clock = new TurnClock(7 * SECOND);
        clock.add(100, 12 * SECOND - 1);
        clock.add(200, 12 * SECOND);
        clock.add(200, 12 * SECOND + 1);
        clock.add(199, 12 * SECOND + 2);
        clock.add(300, 12 * SECOND + 3);

        assertThat(clock.fit())
                .hasValueSatisfying(fit -> assertThat(fit.points()).isEqualTo(3));
    }

    /** A device whose clock runs while the board's stands still has no line that rises. */
    @Test
    void shouldTakeNoSkewWhenTheBoardsTimeStandsStill() {
        TurnClock clock = new TurnClock(0);
        for (int turn = 0; turn < 40; turn++) {
            clock.add(2 * SECOND * turn, 10 * SECOND);
        }

        assertThat(clock.fit())
                .hasValueSatisfying(fit -> assertThat(fit.quality()).isEqualTo(Quality.UNIT_SKEW));
    }

    /** All of a minute by the device, but heard within the first seconds: connection parameters still change. */
    @Test
    void shouldTakeNoSkewWhenAllWasHeardWithinTheFirstSeconds() {
        TurnClock clock = new TurnClock(0);
        for (int turn = 0; turn < 40; turn++) {
            clock.add(2 * SECOND * turn, 100_000L * turn);
        }

        assertThat(clock.fit()).hasValueSatisfying(fit -> {
            assertThat(fit.quality()).isEqualTo(Quality.UNIT_SKEW);
            assertThat(fit.points()).isEqualTo(40);
        });
        assertThat(clock.isTooEarly(100 * SECOND, 4 * SECOND)).isFalse();
    }
}
