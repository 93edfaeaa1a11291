package fermata.decoder.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
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

    /** Of a parabola every point is on the hull; 40 of them are more than it has room for at first. */
    @Test
    void shouldKeepAllPointsAndKnowEachSlopeWhenTheyCurveUp() {
        LowerHull hull = new LowerHull();
        for (int x = 0; x < 40; x++) {
            hull.add(10L * x, x * x);
        }

        assertThat(hull.size()).isEqualTo(40);
        for (int x = 1; x < 40; x++) {
            // From (x - 1)^2 to x^2 over 10.
            assertThat(hull.slopeAt(10L * x)).isEqualTo((2 * x - 1) / 10.0);
            assertThat(hull.heightAt(10L * x - 5)).isEqualTo(x * x - (2 * x - 1) / 2.0);
        }
        assertThat(hull.slopeAt(0)).isEqualTo(0.1);
        // The line of slope 2 touches where 2 x / 10 is 2: at x = 10, height 100, and 100 further left lies 200 lower.
        assertThat(hull.lowest(2, 100)).isEqualTo(100);
        assertThat(hull.lowest(2, 0)).isEqualTo(-100);
    }

    @Test
    void shouldKeepTheLowerOfTwoPointsAtOnePlace() {
        LowerHull hull = new LowerHull();
        hull.add(0, 5);
        hull.add(0, 7);
        hull.add(0, 3);
        hull.add(10, 3);
        hull.add(10, 4);

        assertThat(hull.size()).isEqualTo(2);
        assertThat(hull.heightAt(0)).isEqualTo(3);
        assertThat(hull.slopeAt(10)).isZero();
    }

    @Test
    void shouldDropAPointOnTheWayBetweenItsNeighbours() {
        LowerHull hull = new LowerHull();
        hull.add(0, 0);
        hull.add(10, 1);
        hull.add(20, 2);

        assertThat(hull.size()).isEqualTo(2);
    }

    @Test
    void shouldRefuseToGiveASlopeWhenThereIsOnlyOnePoint() {
        LowerHull hull = new LowerHull();
        hull.add(0, 0);

        assertThatThrownBy(() -> hull.slopeAt(0)).hasMessageContaining("1 points");
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
