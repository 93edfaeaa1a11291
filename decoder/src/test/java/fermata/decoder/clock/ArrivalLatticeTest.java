package fermata.decoder.clock;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ArrivalLatticeTest {
    @ParameterizedTest
    @ValueSource(longs = {7_500, 11_250, 15_000, 30_000, 45_000, 50_000, 100_000})
    void shouldFindTheIntervalOfALinkThatLosesAndStalls(long interval) {
        for (int seed = 1; seed <= 6; seed++) {
            SyntheticLink link = SyntheticLink.COMPARED.withMinutes(5).withInterval(interval);

            long[] arrivals = link.run(seed).arrivalMicros();

            assertThat(ArrivalLattice.intervalMicros(arrivals))
                    .as("seed " + seed)
                    .hasValue(interval);
        }
    }

    @Test
    void shouldNotClaimAnIntervalWhenArrivalsAreAnywhere() {
        Random random = new Random(5);
        long[] arrivals = new long[1000];
        for (int i = 1; i < arrivals.length; i++) {
            arrivals[i] = arrivals[i - 1] + 10_000 + random.nextInt(900_000);
        }

        assertThat(ArrivalLattice.intervalMicros(arrivals)).isEmpty();
        assertThat(ArrivalLattice.intervalMicros(new long[] {1, 45_001, 90_001}))
                .isEmpty();
        assertThat(ArrivalLattice.intervalMicros(new long[0])).isEmpty();
    }

    /** Arrivals of a hand that turns every 180 ms or so, with pauses, held up to the interval where there is one. */
    private static long[] rhythm(int turns, double sigma, long interval, long seed) {
        Random random = new Random(seed);
        long[] arrivals = new long[turns];
        long made = 0;
        for (int i = 0; i < turns; i++) {
            made += (long) (180_000 * Math.exp(sigma * random.nextGaussian())) + (i % 12 == 0 ? 700_000 : 0);
            long sent = interval == 0 ? made : (made + interval - 1) / interval * interval;
            arrivals[i] = sent + (long) Math.abs(random.nextGaussian() * 2_000);
        }
        return arrivals;
    }

    @ParameterizedTest
    @ValueSource(ints = {25, 40, 100, 500})
    void shouldNotTakeTheHandsOwnRhythmForAnInterval(int turns) {
        int claimed = 0;
        for (int seed = 1; seed <= 200; seed++) {
            double sigma = seed % 2 == 0 ? 0.2 : 0.45;
            claimed +=
                    ArrivalLattice.intervalMicros(rhythm(turns, sigma, 0, seed)).isPresent() ? 1 : 0;
        }

        assertThat(claimed).as("claims in 200 streams without an interval").isLessThanOrEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(longs = {15_000, 30_000, 50_000})
    void shouldFindTheIntervalUnderTheHandsOwnRhythm(long interval) {
        for (int seed = 1; seed <= 40; seed++) {
            double sigma = seed % 2 == 0 ? 0.2 : 0.45;

            assertThat(ArrivalLattice.intervalMicros(rhythm(200, sigma, interval, seed)))
                    .as("seed " + seed)
                    .hasValue(interval);
        }
    }
}
