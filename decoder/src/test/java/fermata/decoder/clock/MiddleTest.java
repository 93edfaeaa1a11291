package fermata.decoder.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MiddleTest {
    /** Against the definition, worked out anew after each number; some are equal, some leap. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void shouldAgreeWithTheDefinitionWhateverComes(long seed) {
        Random random = new Random(seed);
        Middle middle = new Middle();
        long[] numbers = new long[200];
        long last = 1_700_000_000_000_000L;
        for (int size = 1; size <= numbers.length; size++) {
            last += random.nextInt(4) == 0 ? 0 : random.nextInt(20) == 0 ? 1_000_000_000L : random.nextInt(300_000);
            numbers[size - 1] = last;
            middle.add(last);

            double sum = 0;
            for (int index = 0; index < size; index++) {
                sum += numbers[index] - numbers[0];
            }
            double beyond = 0;
            for (int index = 0; index < size; index++) {
                beyond += Math.max(0, numbers[index] - numbers[0] - sum / size);
            }
            assertThat(middle.mean()).isCloseTo(numbers[0] + Math.round(sum / size), within(1L));
            assertThat(middle.leverage()).isCloseTo(beyond, within(1 + beyond * 1e-9));
        }
    }
}
