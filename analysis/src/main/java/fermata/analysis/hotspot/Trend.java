package fermata.analysis.hotspot;

import fermata.analysis.statistics.Interval;
import fermata.analysis.statistics.TheilSen;
import java.util.Objects;

/** How a nightly figure moves. */
public sealed interface Trend {
    /** Confidence of the intervals. */
    double CONFIDENCE = 0.95;

    /** Nights it takes to speak of a trend. */
    int NIGHTS_NEEDED = 5;

    /**
     * It moves.
     *
     * @param perDay median slope, units of the figure a day
     * @param interval 95 % of the slope, without 0
     * @param nights how many nights stand behind it
     */
    record Moves(double perDay, Interval interval, int nights) implements Trend {
        public Moves {
            Objects.requireNonNull(interval, "interval");
        }
    }

    /**
     * No change can be seen yet.
     *
     * @param interval 95 % of the slope a day, 0 within it or the slope too small to speak of
     * @param nights how many nights stand behind it
     */
    record NoneSeen(Interval interval, int nights) implements Trend {
        public NoneSeen {
            Objects.requireNonNull(interval, "interval");
        }
    }

    /**
     * Too few nights to say.
     *
     * @param nights how many there are
     * @param needed how many it takes
     */
    record TooFew(int nights, int needed) implements Trend {}

    /**
     * The trend of a figure over nights of one series. Cost: the square of the nights.
     *
     * @param days which day each night is, any origin, rising
     * @param figures one for each
     * @param leastPerDay a slope smaller than this is none to speak of
     */
    static Trend of(double[] days, double[] figures, double leastPerDay) {
        if (days.length < NIGHTS_NEEDED) {
            return new TooFew(days.length, NIGHTS_NEEDED);
        }
        TheilSen fit = TheilSen.fit(days, figures, CONFIDENCE);
        return fit.slopeInterval().contains(0) || Math.abs(fit.slope()) < leastPerDay
                ? new NoneSeen(fit.slopeInterval(), days.length)
                : new Moves(fit.slope(), fit.slopeInterval(), days.length);
    }
}
