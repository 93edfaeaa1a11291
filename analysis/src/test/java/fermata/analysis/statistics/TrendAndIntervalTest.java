package fermata.analysis.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TrendAndIntervalTest {
    /** Source: `stats_reference.csv`, R 4.2.2, on the inputs tx and ty. */
    @Test
    void shouldAgreeWithRWhenATrendIsFitted() {
        TheilSen fit = TheilSen.fit(StatisticsReference.input("tx"), StatisticsReference.input("ty"));

        assertThat(fit.slope()).isCloseTo(StatisticsReference.value("TS.slope"), within(1e-9));
        assertThat(fit.intercept()).isCloseTo(StatisticsReference.value("TS.intercept_median(y-bx)"), within(1e-9));
        assertThat(fit.pairs()).isEqualTo((int) StatisticsReference.value("TS.n_pairs"));
        assertThat(fit.slopeInterval(0.95).low())
                .isCloseTo(StatisticsReference.value("TS.ci95.lo(Sen rounded ranks)"), within(1e-9));
        assertThat(fit.slopeInterval(0.95).high())
                .isCloseTo(StatisticsReference.value("TS.ci95.hi(Sen rounded ranks)"), within(1e-9));
    }

    @Test
    void shouldSayWhyWhenThereIsNoTrendToFit() {
        assertThatThrownBy(() -> TheilSen.fit(new double[3], new double[3])).hasMessageContaining("needs at least 4");
        assertThatThrownBy(() -> TheilSen.fit(new double[5], new double[5])).hasMessageContaining("no trend");
    }

    /** Source: `stats_reference.csv`, R 4.2.2 `prop.test(correct = FALSE)`. */
    @ParameterizedTest
    @CsvSource({"0, 10", "3, 20", "17, 20", "150, 216", "1, 72"})
    void shouldAgreeWithRWhenAShareGetsItsInterval(int hits, int of) {
        Interval interval = new Proportion(hits, of).wilson(0.95);
        String key = "wilson." + hits + "_of_" + of;

        assertThat(interval.low()).isCloseTo(StatisticsReference.value(key + ".lo"), within(1e-8));
        assertThat(interval.high()).isCloseTo(StatisticsReference.value(key + ".hi"), within(1e-8));
    }

    /** Source: `stats_reference.csv`, R 4.2.2, 999 resamples of w12 with the indices shipped beside it. */
    @Test
    void shouldAgreeWithRWhenPercentilesOfResamplesAreTaken() {
        double[] values = StatisticsReference.input("w12");
        double[] means = Arrays.stream(StatisticsReference.bootstrapIndices())
                .mapToDouble(draw -> Arrays.stream(draw)
                        .mapToDouble(index -> values[index])
                        .average()
                        .orElseThrow())
                .toArray();

        Interval interval = NestedBootstrap.percentiles(means, 0.95);

        assertThat(interval.low()).isCloseTo(StatisticsReference.value("boot12.mean.type7.p0.025"), within(1e-8));
        assertThat(interval.high()).isCloseTo(StatisticsReference.value("boot12.mean.type7.p0.975"), within(1e-8));
    }

    @Test
    void shouldCoverTheTruthAboutAsOftenAsPromisedWhenNightsDiffer() {
        SplittableRandom random = new SplittableRandom(40);
        NestedBootstrap bootstrap = new NestedBootstrap(300, random);
        int covered = 0;
        int rounds = 300;
        for (int round = 0; round < rounds; round++) {
            List<double[]> nights = new ArrayList<>();
            for (int night = 0; night < 14; night++) {
                double level = random.nextGaussian();
                nights.add(random.doubles(12).map(noise -> level + noise - 0.5).toArray());
            }
            Interval interval = bootstrap.intervalOfMean(nights, 0.95);
            covered += interval.contains(0) ? 1 : 0;
        }

        // Fourteen clusters are few: the percentile bootstrap is known to promise a little too much.
        assertThat((double) covered / rounds).isBetween(0.88, 0.98);
    }

    @Test
    void shouldRefuseAnEmptyClusterAndTooFewResamples() {
        SplittableRandom random = new SplittableRandom(1);
        assertThatThrownBy(() -> new NestedBootstrap(99, random)).hasMessageStartingWith("99 resamples");
        assertThatThrownBy(() -> new NestedBootstrap(100, random).intervalOfMean(List.of(new double[0]), 0.9))
                .hasMessageContaining("none that is empty");
    }
}
