package fermata.decoder.clock;

import java.util.Objects;

/**
 * The line that takes one epoch's device time to the board's time:
 * {@code board = offsetMicros + device + skewPpm * 1e-6 * (device - pivotMicros)}.
 *
 * @param pivotMicros device time about which the skew acts: middle of the points, so that digits are not lost
 * @param offsetMicros board minus device time at the pivot
 * @param skewPpm how much more the board's clock advances than the device's, in parts per million
 * @param residualP50Micros median of arrival minus line: the usual lateness above the best
 * @param residualP99Micros 99th percentile of the same
 * @param points how many arrivals the line was fitted to
 * @param quality how far to trust it
 */
public record ClockFit(
        long pivotMicros,
        double offsetMicros,
        double skewPpm,
        double residualP50Micros,
        double residualP99Micros,
        int points,
        Quality quality) {
    /** How the line came about. */
    public enum Quality {
        /** Lower hull over at least 60 s and 20 points, skew within 200 ppm; in short epochs drawn towards 0. */
        HULL,
        /** Too short or too thin for a skew: smallest offset, skew taken as 0. */
        UNIT_SKEW,
        /** Hull, but the skew is beyond 200 ppm: the tick in the profile is wrong, or the clock is poor. */
        SKEW_SUSPECT
    }

    public ClockFit {
        Objects.requireNonNull(quality, "quality");
        if (points < 1) {
            throw new IllegalArgumentException("points " + points + " is not positive");
        }
        if (!(skewPpm > -1e6 && skewPpm < 1e9) || !Double.isFinite(offsetMicros)) {
            throw new IllegalArgumentException(
                    "offsetMicros " + offsetMicros + " with skewPpm " + skewPpm + " is not a line that rises");
        }
    }

    /** Board time of a device time, both in microseconds. Never falls when the device time rises. O(1). */
    public long boardMicros(long deviceMicros) {
        long sincePivot = deviceMicros - pivotMicros;
        return deviceMicros + Math.round(offsetMicros + skewPpm * 1e-6 * sincePivot);
    }
}
