package fermata.analysis.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LogNormalMixtureTest {
    /** Source: `stats_reference.csv`: EM of 20,000 steps in R 4.2.2; mixtools 2.0.0 and mclust 6.0.0 agree. */
    @ParameterizedTest
    @ValueSource(strings = {"A", "B"})
    void shouldAgreeWithRWhenFittedToItsReferenceSets(String set) {
        double[] times = StatisticsReference.column("lognormal_mixture_" + set + ".csv", 1);
        String key = "mix" + set + ".em.";

        LogNormalMixture fit = LogNormalMixture.fit(times);

        assertThat(fit.slowWeight()).isCloseTo(StatisticsReference.value(key + "weight2"), within(1e-4));
        assertThat(fit.fluent().mu()).isCloseTo(StatisticsReference.value(key + "mu1"), within(1e-4));
        assertThat(fit.slow().mu()).isCloseTo(StatisticsReference.value(key + "mu2"), within(1e-4));
        assertThat(fit.fluent().sigma()).isCloseTo(StatisticsReference.value(key + "sigma1"), within(1e-4));
        assertThat(fit.slow().sigma()).isCloseTo(StatisticsReference.value(key + "sigma2"), within(1e-4));
        assertThat(fit.logLikelihood(times))
                .isCloseTo(StatisticsReference.value(key + "loglik_logscale"), within(1e-5));
        assertThat(fit.slowProbability(StatisticsReference.value(key + "posterior_half_crossing_ms")))
                .isCloseTo(0.5, within(1e-4));
        assertThat(fit.slowProbability(StatisticsReference.value(key + "posterior_0.95_crossing_ms")))
                .isCloseTo(0.95, within(1e-4));
        assertThat(Arrays.stream(times)
                        .filter(time -> fit.slowProbability(time) > 0.5)
                        .count())
                .isEqualTo((long) StatisticsReference.value(key + "n_classified_slow_at_half"));
    }

    @Test
    void shouldNotCallTheFastestTurnsHeldUpWhenTheSlowKindIsWide() {
        LogNormalMixture wide = new LogNormalMixture(0.3, new LogNormal(5, 0.2), new LogNormal(6, 1.5));

        assertThat(wide.slowProbability(20)).isEqualTo(wide.slowProbability(Math.exp(5)));
        assertThat(wide.slowProbability(20)).isLessThan(0.1);
    }

    @Test
    void shouldStayFiniteWhenABatchingRadioRepeatsOneValue() {
        double[] times = new double[60];
        Arrays.fill(times, 30);
        for (int index = 0; index < 15; index++) {
            times[index] = 900 + index;
        }

        LogNormalMixture fit = LogNormalMixture.fit(times);

        assertThat(fit.slowProbability(30)).isLessThan(0.01);
        assertThat(fit.slowProbability(900)).isGreaterThan(0.99);
    }

    @Test
    void shouldSayWhatIsWrongWhenTimesCannotBeFitted() {
        assertThatThrownBy(() -> LogNormalMixture.fit(new double[19])).hasMessageStartingWith("19 times are too few");
        double[] times = new Random(1).doubles(30, 1, 2).toArray();
        times[7] = 0;
        assertThatThrownBy(() -> LogNormalMixture.fit(times)).hasMessage("time 0.0 at 7 is not positive");
    }
}
