package fermata.decoder.clock;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Tag;
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

    /** Differences of 1 to 12 times 30 ms, each as often, without any jitter. */
    private static long[] exact(int differences) {
        long[] arrivals = new long[differences + 1];
        for (int i = 1; i <= differences; i++) {
            arrivals[i] = arrivals[i - 1] + 30_000 * (1 + 5 * i % 12);
        }
        return arrivals;
    }

    @Test
    void shouldNeedTwentyDifferences() {
        assertThat(ArrivalLattice.intervalMicros(exact(20))).hasValue(30_000);
        assertThat(ArrivalLattice.intervalMicros(exact(19))).isEmpty();
    }

    /** An even rhythm fits every interval that divides it: its differences hardly spread, and nothing is claimed. */
    @Test
    void shouldClaimNothingWhenTheRhythmIsEven() {
        long[] arrivals = new long[200];
        for (int i = 0; i < arrivals.length; i++) {
            arrivals[i] = 100_000L * i;
        }

        assertThat(ArrivalLattice.intervalMicros(arrivals)).isEmpty();
    }

    /** What shares a connection event, a pause of more than 2 s, and all after 512 differences say nothing. */
    @Test
    void shouldLeaveOutWhatTellsNothing() {
        long[] told = exact(512);
        long[] arrivals = Arrays.copyOf(told, 1200);
        for (int i = told.length; i < arrivals.length; i++) {
            arrivals[i] = arrivals[i - 1] + 11_111 + 777L * (i % 100);
        }
        assertThat(ArrivalLattice.intervalMicros(arrivals)).hasValue(30_000);

        long[] broken = new long[80];
        for (int i = 1; i < broken.length; i++) {
            long useless = i % 4 == 1 ? 3_749 : 2_000_001;
            broken[i] = broken[i - 1] + (i % 2 == 0 ? 30_000 * (1 + 5 * (i / 2) % 12) : useless);
        }
        assertThat(ArrivalLattice.intervalMicros(broken)).hasValue(30_000);
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

    @Tag("sweep")
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

    @Tag("sweep")
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
