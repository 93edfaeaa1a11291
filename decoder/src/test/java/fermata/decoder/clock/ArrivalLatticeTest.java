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
}
