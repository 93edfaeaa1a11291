package fermata.analysis.hotspot;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.statistics.NestedBootstrap;
import fermata.analysis.statistics.Proportion;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NightMeansTest {
    private static final int ROUNDS = 300;
    private static final double TRUE_MEAN = 0.4 * 1.0;

    /** Mostly nothing, now and then a second or so: what losses per solve look like. */
    @ParameterizedTest(name = "{0} nights that differ by {1}")
    @CsvSource({"1, 0", "6, 0", "10, 0", "10, 0.15"})
    void shouldCoverTheTrueMeanAboutAsOftenAsPromised(int nights, double nightSpread) {
        SplittableRandom random = new SplittableRandom(31);
        int covered = 0;
        for (int round = 0; round < ROUNDS; round++) {
            List<double[]> values = new ArrayList<>();
            for (int night = 0; night < nights; night++) {
                values.add(night(random, nightSpread));
            }
            boolean isCovered = new NightMeans(values)
                    .interval(new NestedBootstrap(299, random))
                    .contains(TRUE_MEAN);
            covered += isCovered ? 1 : 0;
        }

        // The promise is 90 to 98 %; what 300 rounds leave open on either side is allowed for by Wilson's interval.
        Proportion share = new Proportion(covered, ROUNDS);
        assertThat(share.wilson(0.95).high()).as("covered " + share.share()).isGreaterThanOrEqualTo(0.90);
        assertThat(share.wilson(0.95).low()).as("covered " + share.share()).isLessThanOrEqualTo(0.98);
    }

    private static double[] night(SplittableRandom random, double nightSpread) {
        double shift = nightSpread * random.nextGaussian();
        double[] values = new double[50];
        for (int solve = 0; solve < values.length; solve++) {
            boolean isLost = random.nextDouble() < 0.4;
            values[solve] = shift + (isLost ? Math.exp(0.35 * random.nextGaussian() - 0.35 * 0.35 / 2) : 0);
        }
        return values;
    }
}
