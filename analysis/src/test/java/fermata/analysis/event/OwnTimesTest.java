package fermata.analysis.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.event.OwnTimes.Taken;
import org.junit.jupiter.api.Test;

class OwnTimesTest {
    /** By hand: 20 and 20 intervals make a difference as sure as 10, against 5 for what is usual. */
    @Test
    void shouldDrawADifferenceTowardsTheUsualByHowFewIntervalsThereAre() {
        OwnTimes own =
                new OwnTimes(new Taken(20, 200_000), new Taken(20, 400_000), new Taken(20, 600_000), Taken.NEVER);

        assertThat(own.rotationMicrosAbove(300_000)).isCloseTo((10 * 400_000 + 5 * 300_000) / 15.0, within(1e-6));
        assertThat(own.rotationLogAbove(1)).isCloseTo((10 * Math.log(3) + 5) / 15, within(1e-12));
        assertThat(own.regripLogAbove(0.4)).isCloseTo((10 * Math.log(2) + 5 * 0.4) / 15, within(1e-12));
    }

    @Test
    void shouldComeCloseToWhatWasMeasuredWithManyAndStayWithTheUsualWithFew() {
        assertThat(rotations(2_000, 2_000).rotationMicrosAbove(300_000)).isCloseTo(700_000, within(2_500.0));
        assertThat(rotations(2_000, 1).rotationMicrosAbove(300_000)).isBetween(360_000.0, 370_000.0);
    }

    @Test
    void shouldStayWithTheUsualWithoutADrillOrWithoutFluentTurns() {
        assertThat(OwnTimes.NONE.rotationLogAbove(1.1)).isEqualTo(1.1);
        assertThat(OwnTimes.NONE.regripLogAbove(0.6)).isEqualTo(0.6);
        assertThat(rotations(0, 9).rotationMicrosAbove(300_000)).isEqualTo(300_000);
    }

    @Test
    void shouldRefuseAMedianWithoutIntervalsAndIntervalsWithoutAMedian() {
        assertThatThrownBy(() -> new Taken(0, 1)).hasMessageContaining("1 us over 0 intervals");
        assertThatThrownBy(() -> new Taken(3, 0)).hasMessageContaining("0 us over 3 intervals");
    }

    private static OwnTimes rotations(int fluent, int rotations) {
        return new OwnTimes(
                fluent == 0 ? Taken.NEVER : new Taken(fluent, 250_000),
                Taken.NEVER,
                new Taken(rotations, 950_000),
                Taken.NEVER);
    }
}
