package fermata.analysis.rhythm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RhythmSnapshotTest {
    /**
     * The two reference mixtures of turns and pauses; bounds are the intervals where the fitted mixture (R 4.2.2, own
     * EM) gives a pause the probabilities 0.5 and 0.95, and half as much again above.
     */
    @ParameterizedTest
    @CsvSource({"A, 274.885, 343.940", "B, 393.198, 524.408"})
    void shouldCutWherePausesAreLikelyWhenLearnedFromAReferenceMixture(String set, double even, double sure)
            throws IOException {
        RhythmSnapshot rhythm = RhythmSnapshot.learn(mixture(set));

        assertThat(rhythm.intervals()).isEqualTo(300);
        assertThat(rhythm.restFromMicros() / 1e3).isBetween(even, 1.5 * sure);
    }

    @Test
    void shouldHaveTheSameIdWhenValuesAreEqualAndAnotherWhenNot() throws IOException {
        RhythmSnapshot one = RhythmSnapshot.learn(mixture("A"));

        assertThat(one.id())
                .isEqualTo(RhythmSnapshot.learn(mixture("A")).id())
                .hasSize(12)
                .isNotEqualTo(RhythmSnapshot.learn(mixture("B")).id());
    }

    @Test
    void shouldNotMindTheOrderWhenLearning() throws IOException {
        long[] intervals = mixture("A");
        long[] sorted = intervals.clone();
        Arrays.sort(sorted);

        assertThat(RhythmSnapshot.learn(sorted)).isEqualTo(RhythmSnapshot.learn(intervals));
    }

    @Test
    void shouldStandOnThePriorWhenTheNightIsTooShort() {
        assertThat(RhythmSnapshot.learn(new long[RhythmSnapshot.INTERVALS_NEEDED - 1]))
                .isEqualTo(RhythmSnapshot.PRIOR);
    }

    @Test
    void shouldKeepTheFloorWhenTurnsAreVeryFast() {
        long[] fast = new long[100];
        Arrays.fill(fast, 40_000);
        fast[7] = 0;

        assertThat(RhythmSnapshot.learn(fast).restFromMicros()).isEqualTo(250_000);
    }

    @Test
    void shouldRefuseWhenAValueIsImpossible() {
        assertThatThrownBy(() -> new RhythmSnapshot(0, 0.5, 2.5, 250_000, 10))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("median 0 us");
    }

    private static long[] mixture(String set) throws IOException {
        String file = "/fermata/fixtures/reference/lognormal_mixture_" + set + ".csv";
        try (InputStream table = Objects.requireNonNull(RhythmSnapshotTest.class.getResourceAsStream(file))) {
            return new String(table.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .skip(1)
                    .map(line -> line.split(","))
                    .mapToLong(cells -> Math.round(Double.parseDouble(cells[1]) * 1000))
                    .toArray();
        }
    }
}
