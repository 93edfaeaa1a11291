package fermata.decoder.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LowerHullTest {
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void shouldEqualTheHighestLineUnderAllPointsWhenTriedByBruteForce(long seed) {
        Random random = new Random(seed);
        int count = 2 + random.nextInt(30);
        long[] x = new long[count];
        double[] y = new double[count];
        LowerHull hull = new LowerHull();
        for (int i = 0; i < count; i++) {
            x[i] = (i == 0 ? 0 : x[i - 1]) + 1 + random.nextInt(5);
            y[i] = random.nextInt(20);
            hull.add(x[i], y[i]);
        }

        for (long at = x[0]; at <= x[count - 1]; at++) {
            assertThat(hull.heightAt(at)).as("at " + at).isCloseTo(lowestChord(x, y, at), within(1e-9));
        }
    }

    /** The hull at a place is the lowest of all chords over it. */
    private static double lowestChord(long[] x, double[] y, long at) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < x.length; i++) {
            for (int j = i; j < x.length; j++) {
                if (x[i] == at) {
                    lowest = Math.min(lowest, y[i]);
                } else if (x[i] < at && x[j] >= at) {
                    lowest = Math.min(lowest, y[i] + (y[j] - y[i]) * (at - x[i]) / (x[j] - x[i]));
                }
            }
        }
        return lowest;
    }
}
