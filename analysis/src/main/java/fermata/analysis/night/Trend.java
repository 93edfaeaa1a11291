package fermata.analysis.night;

import fermata.analysis.statistics.Interval;
import fermata.analysis.statistics.TheilSen;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;

/**
 * How a nightly figure moves. Figures that are looked at together are judged together, by Holm's steps: where none of
 * them moves, the chance that any is said to move is at most 1 in 20, however they hang together.
 *
 * <p>Source: Holm 1979, Scandinavian Journal of Statistics 6, 65-70; each step by Sen's interval of the slope.
 */
public sealed interface Trend {
    /** What the kind makes of it: exactly one of these is asked. */
    <T> T fold(
            Function<? super Moves, ? extends T> moves,
            Function<? super NoneSeen, ? extends T> noneSeen,
            Function<? super TooFew, ? extends T> tooFew);

    /** Confidence in all that is said of figures that are looked at together. */
    double CONFIDENCE = 0.95;

    /** Nights it takes to speak of a trend: of nine figures fewer could not tell even one that only ever falls. */
    int NIGHTS_NEEDED = 7;

    /**
     * It moves.
     *
     * @param perDay median slope, units of the figure a day
     * @param interval of the slope at the last step's confidence, without 0
     * @param nights how many nights stand behind it
     * @param together how many figures were looked at together
     */
    record Moves(double perDay, Interval interval, int nights, int together) implements Trend {
        public Moves {
            Objects.requireNonNull(interval, "interval");
        }

        @Override
        public <T> T fold(
                Function<? super Moves, ? extends T> moves,
                Function<? super NoneSeen, ? extends T> noneSeen,
                Function<? super TooFew, ? extends T> tooFew) {
            return moves.apply(this);
        }
    }

    /**
     * No change can be seen yet.
     *
     * @param interval of the slope at the last step's confidence, 0 within it or the slope too small to speak of
     * @param nights how many nights stand behind it
     */
    record NoneSeen(Interval interval, int nights) implements Trend {
        public NoneSeen {
            Objects.requireNonNull(interval, "interval");
        }

        @Override
        public <T> T fold(
                Function<? super Moves, ? extends T> moves,
                Function<? super NoneSeen, ? extends T> noneSeen,
                Function<? super TooFew, ? extends T> tooFew) {
            return noneSeen.apply(this);
        }
    }

    /**
     * Too few nights to say.
     *
     * @param nights how many there are
     * @param needed how many it takes
     */
    record TooFew(int nights, int needed) implements Trend {
        @Override
        public <T> T fold(
                Function<? super Moves, ? extends T> moves,
                Function<? super NoneSeen, ? extends T> noneSeen,
                Function<? super TooFew, ? extends T> tooFew) {
            return tooFew.apply(this);
        }
    }

    /**
     * The trends of figures over nights of one series, judged together. Cost: the square of the nights, for each.
     *
     * @param days which day each night is, any origin, rising
     * @param figures of each a value for each night
     * @param leastPerDay a slope smaller than this is none to speak of
     * @return as many
     */
    static List<Trend> together(double[] days, List<double[]> figures, double leastPerDay) {
        if (days.length < NIGHTS_NEEDED) {
            return figures.stream()
                    .map(figure -> (Trend) new TooFew(days.length, NIGHTS_NEEDED))
                    .toList();
        }
        List<TheilSen> fits =
                figures.stream().map(figure -> TheilSen.fit(days, figure)).toList();
        int told = 0;
        double confidence = CONFIDENCE;
        for (int before = -1; told > before && told < fits.size(); ) {
            before = told;
            confidence = 1 - (1 - CONFIDENCE) / (fits.size() - told);
            told = countMoving(fits, confidence);
        }
        double last = confidence;
        return fits.stream()
                .map(fit -> of(fit, last, days.length, fits.size(), leastPerDay))
                .toList();
    }

    private static int countMoving(List<TheilSen> fits, double confidence) {
        return (int) fits.stream()
                .filter(fit -> !fit.slopeInterval(confidence).contains(0))
                .count();
    }

    private static Trend of(TheilSen fit, double confidence, int nights, int together, double leastPerDay) {
        Interval interval = fit.slopeInterval(confidence);
        return interval.contains(0) || Math.abs(fit.slope()) < leastPerDay
                ? new NoneSeen(interval, nights)
                : new Moves(fit.slope(), interval, nights, together);
    }
}
