package fermata.analysis.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class TrendTest {
    private static final double[] DAYS = IntStream.range(0, 30).asDoubleStream().toArray();

    @Test
    void shouldFindTheSlopeWhenAFigureFallsThroughNoise() {
        SplittableRandom random = new SplittableRandom(4);
        double[] figures = IntStream.range(0, 30)
                .mapToDouble(day -> 900 - 10 * day + 20 * random.nextGaussian())
                .toArray();

        assertThat(Trend.of(DAYS, figures, 1)).isInstanceOfSatisfying(Trend.Moves.class, moves -> {
            assertThat(moves.perDay()).isCloseTo(-10, within(1.5));
            assertThat(moves.interval().contains(-10)).isTrue();
        });
    }

    @Test
    void shouldSayThatNoChangeCanBeSeenWhenThereIsOnlyNoise() {
        SplittableRandom random = new SplittableRandom(5);
        double[] figures = IntStream.range(0, 30)
                .mapToDouble(day -> 900 + 50 * random.nextGaussian())
                .toArray();

        assertThat(Trend.of(DAYS, figures, 1)).isInstanceOf(Trend.NoneSeen.class);
    }

    @Test
    void shouldNotSpeakOfAChangeThatIsTooSmallToMatter() {
        double[] figures =
                IntStream.range(0, 30).mapToDouble(day -> 900 - 0.5 * day).toArray();

        assertThat(Trend.of(DAYS, figures, 0.4)).isInstanceOf(Trend.Moves.class);
        assertThat(Trend.of(DAYS, figures, 0.6)).isInstanceOf(Trend.NoneSeen.class);
    }

    @Test
    void shouldSayHowManyNightsItTakesWhenThereAreTooFew() {
        assertThat(Trend.of(new double[] {1, 2}, new double[] {5, 6}, 0)).isEqualTo(new Trend.TooFew(2, 5));
    }
}
