package fermata.analysis.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.statistics.TheilSen;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TrendTest {
    private static final double[] DAYS = IntStream.range(0, 30).asDoubleStream().toArray();

    @Test
    void shouldFindTheSlopeWhenAFigureFallsThroughNoise() {
        SplittableRandom random = new SplittableRandom(4);
        double[] figures = IntStream.range(0, 30)
                .mapToDouble(day -> 900 - 10 * day + 20 * random.nextGaussian())
                .toArray();

        assertThat(only(DAYS, figures, 1)).isInstanceOfSatisfying(Trend.Moves.class, moves -> {
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

        assertThat(only(DAYS, figures, 1)).isInstanceOf(Trend.NoneSeen.class);
    }

    @Test
    void shouldNotSpeakOfAChangeThatIsTooSmallToMatter() {
        double[] figures =
                IntStream.range(0, 30).mapToDouble(day -> 900 - 0.5 * day).toArray();

        assertThat(only(DAYS, figures, 0.4)).isInstanceOf(Trend.Moves.class);
        assertThat(only(DAYS, figures, 0.6)).isInstanceOf(Trend.NoneSeen.class);
    }

    @Test
    void shouldSayHowManyNightsItTakesWhenThereAreTooFew() {
        assertThat(only(new double[] {1, 2}, new double[] {5, 6}, 0)).isEqualTo(new Trend.TooFew(2, 7));
    }

    /** Where nothing moves, one look in twenty may see something move, whichever figure it is. */
    @ParameterizedTest
    @ValueSource(ints = {7, 10, 20, 28})
    void shouldSeldomSayThatAnyOfNineFiguresMovesWhenNoneDoes(int nights) {
        SplittableRandom random = new SplittableRandom(nights);
        double[] days = IntStream.range(0, nights).asDoubleStream().toArray();
        int looks = 1000;
        int wrong = 0;
        for (int look = 0; look < looks; look++) {
            List<double[]> figures =
                    Stream.generate(() -> noise(nights, random)).limit(9).toList();
            boolean any = Trend.together(days, figures, 0).stream().anyMatch(Trend.Moves.class::isInstance);
            wrong += any ? 1 : 0;
        }

        // Binomial: of 1,000 looks at 0.05 each more than 70 come about once in 500.
        assertThat(wrong).isLessThanOrEqualTo(70);
    }

    /** Holm's second step: beside eight that surely move, the ninth is judged as if it were alone. */
    @Test
    void shouldJudgeByWhatIsLeftWhenOthersMove() {
        double[] ninth = weak();
        List<double[]> still = new ArrayList<>(List.of(ninth));
        List<double[]> moving = new ArrayList<>(List.of(ninth));
        for (int other = 0; other < 8; other++) {
            still.add(noise(30, new SplittableRandom(other)));
            moving.add(DAYS);
        }

        assertThat(only(DAYS, ninth, 0)).isInstanceOf(Trend.Moves.class);
        assertThat(Trend.together(DAYS, still, 0).get(0)).isInstanceOf(Trend.NoneSeen.class);
        assertThat(Trend.together(DAYS, moving, 0).get(0))
                .isInstanceOfSatisfying(
                        Trend.Moves.class, moves -> assertThat(moves.together()).isEqualTo(9));
    }

    /** Moves by 95 % of its own, and not by 99.4 %. */
    private static double[] weak() {
        SplittableRandom random = new SplittableRandom(12);
        while (true) {
            double[] figures = noise(30, random);
            TheilSen fit = TheilSen.fit(DAYS, figures);
            if (!fit.slopeInterval(0.95).contains(0)
                    && fit.slopeInterval(1 - 0.05 / 9).contains(0)) {
                return figures;
            }
        }
    }

    private static double[] noise(int nights, SplittableRandom random) {
        return random.doubles(nights).toArray();
    }

    private static Trend only(double[] days, double[] figures, double leastPerDay) {
        return Trend.together(days, List.of(figures), leastPerDay).get(0);
    }
}
