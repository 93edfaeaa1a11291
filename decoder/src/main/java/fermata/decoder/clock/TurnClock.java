package fermata.decoder.clock;

import java.util.Arrays;
import java.util.Optional;

/**
 * Fits the line that takes one epoch's device time to the board's time, under the arrivals.
 *
 * <p>With at least 60 s and 20 points, not counting the first 5 s, the line is the segment of the lower convex hull at
 * the middle of the device times (as the one-way estimator of ethz-asl/cuckoo_time_translator does), its skew drawn
 * towards none by as much as the delays of a short epoch leave it open. It touches arrivals and passes none, so what
 * remains is the smallest delay ever met, as a constant. With less, the smallest offset and no skew.
 *
 * <p>Microseconds. {@link #add} costs O(1) amortised, {@link #fit} O(n log n), memory 16 bytes a point. Not
 * thread-safe.
 */
public final class TurnClock {
    /** Shorter than this, a few milliseconds of delay make tens of ppm of skew. */
    public static final long MIN_SPAN_MICROS = 60_000_000;
    /** Fewer arrivals than this hardly touch the line at both ends. */
    public static final int MIN_POINTS = 20;
    /** Connection parameters change about 5 s after a connect, and delays with them. */
    public static final long SETTLING_MICROS = 5_000_000;
    /** Beyond this it is not a crystal any more. */
    public static final double MAX_SKEW_PPM = 200;

    /**
     * How far two clocks run apart before anything is measured, as a standard deviation: each may be off by 50 ppm
     * (Bluetooth Core Specification, Vol 6, Part B, 4.2.1: active clock accuracy).
     */
    private static final double PRIOR_SKEW = 50e-6;

    /** In standard errors beyond {@link #MAX_SKEW_PPM}: then it is the clock and not the delays. */
    private static final double SURELY = 4;

    private static final long EARLY_MICROS = 5_000;
    /** Chance of a false alarm a point is below e^-14, one in a million, were delays spread evenly. */
    private static final double ALARM_EXPONENT = 14;

    /** A crystal in a hand warms by some 10 degrees: a few ppm, which a long pause adds up. */
    private static final double MAX_WANDER = 10e-6;

    private final long startMicros;
    private final LowerHull hull = new LowerHull();
    private final Middle middle = new Middle();
    private long[] device = new long[32];
    private long[] arrival = new long[32];
    private int size;
    private int settled;
    private double sumOffset;

    /**
     * For one epoch.
     *
     * @param startMicros board time at which the epoch began
     */
    public TurnClock(long startMicros) {
        this.startMicros = startMicros;
    }

    /** Adds an arrival. Device times must not fall; one that does is left out, since it belongs to another epoch. */
    public void add(long deviceMicros, long arrivalMicros) {
        if (size > 0 && deviceMicros < device[size - 1]) {
            return;
        }
        if (size == device.length) {
            device = Arrays.copyOf(device, 2 * size);
            arrival = Arrays.copyOf(arrival, 2 * size);
        }
        device[size] = deviceMicros;
        arrival[size] = arrivalMicros;
        size++;
        if (arrivalMicros < startMicros + SETTLING_MICROS) {
            settled = size;
        } else {
            hull.add(deviceMicros, arrivalMicros - deviceMicros);
            middle.add(deviceMicros);
            sumOffset += arrivalMicros - deviceMicros;
        }
    }

    /**
     * Whether an arrival comes clearly before the line so far, which a late frame cannot and a clock set forward does:
     * by 5 ms, or by what the line may be too high by chance if that is more.
     *
     * <p>The line is the hull's at the mean of the device times: of all lines under the points the highest there
     * (Moon, Skelly and Towsley's linear programme), so it is never too low at the mean. If it is too high by d further
     * on, every later point lies above the straight way from 0 at the mean to d there. Of delays that are spread evenly
     * up to twice their mean the chance of that is at most exp(-d leverage / (2 mean delay distance)), leverage being
     * {@link Middle#leverage()}. So there is no verdict before enough points lie far enough on both sides of the
     * middle: after a break the first turns weigh much, and their own delays with them.
     */
    public boolean isTooEarly(long deviceMicros, long arrivalMicros) {
        int points = size - settled;
        if (points < MIN_POINTS || device[size - 1] - device[settled] < MIN_SPAN_MICROS) {
            return false;
        }
        long mean = middle.mean();
        double slope = hull.slopeAt(mean);
        double height = hull.heightAt(mean);
        double distance = deviceMicros - mean;
        double undercut = ALARM_EXPONENT * 2 * meanDelay(height) * distance / middle.leverage();
        double wander = MAX_WANDER * (deviceMicros - device[size - 1]);
        double line = height + slope * distance;
        return arrivalMicros - deviceMicros < line - Math.max(EARLY_MICROS, undercut) - wander;
    }

    /** Of the settled points above a line of that height at their mean. It was fitted to two of them. */
    private double meanDelay(double heightAtMean) {
        int points = size - settled;
        return Math.max(0, sumOffset / points - heightAtMean) * points / (points - 2);
    }

    /** The line so far; empty if nothing was added. */
    public Optional<ClockFit> fit() {
        if (size == 0) {
            return Optional.empty();
        }
        // An epoch that ended within its first seconds has nothing but those.
        int from = settled < size ? settled : 0;
        int points = size - from;
        long pivot = device[from] + (device[size - 1] - device[from]) / 2;
        boolean isLong = points >= MIN_POINTS && device[size - 1] - device[from] >= MIN_SPAN_MICROS;
        if (isLong && settled < size && hull.slopeAt(pivot) > -1) {
            return Optional.of(hullLine(from, pivot));
        }
        double smallest = Double.POSITIVE_INFINITY;
        for (int i = from; i < size; i++) {
            smallest = Math.min(smallest, arrival[i] - device[i]);
        }
        return Optional.of(line(from, pivot, smallest, 0, ClockFit.Quality.UNIT_SKEW));
    }

    private ClockFit hullLine(int from, long pivot) {
        double slope = hull.slopeAt(pivot);
        double error = slopeError(from, pivot);
        if (Math.abs(slope) <= MAX_SKEW_PPM * 1e-6 + SURELY * error) {
            slope *= PRIOR_SKEW * PRIOR_SKEW / (PRIOR_SKEW * PRIOR_SKEW + error * error);
        }
        ClockFit.Quality quality =
                Math.abs(slope) <= MAX_SKEW_PPM * 1e-6 ? ClockFit.Quality.HULL : ClockFit.Quality.SKEW_SUSPECT;
        return line(from, pivot, hull.lowest(slope, pivot), slope * 1e6, quality);
    }

    /**
     * Standard error of the hull's slope: in either half of the points the smallest of delays spread evenly about their
     * mean is twice that over their number, and the halves lie half a span apart. Doubled, since delays are not spread
     * evenly: on made-up links of 1 to 3 min, true errors are then 0.7 to 1.4 of it.
     */
    private double slopeError(int from, long pivot) {
        double slope = hull.slopeAt(pivot);
        double height = hull.heightAt(pivot);
        double sum = 0;
        for (int i = from; i < size; i++) {
            sum += arrival[i] - device[i] - height - slope * (device[i] - pivot);
        }
        double half = (size - from) / 2.0;
        double smallest = 2 * (sum / (2 * half)) / half;
        return 2 * smallest / ((device[size - 1] - device[from]) / 2.0);
    }

    private ClockFit line(int from, long pivot, double offset, double skewPpm, ClockFit.Quality quality) {
        double[] residuals = new double[size - from];
        for (int i = from; i < size; i++) {
            residuals[i - from] = arrival[i] - device[i] - offset - skewPpm * 1e-6 * (device[i] - pivot);
        }
        Arrays.sort(residuals);
        return new ClockFit(
                pivot, offset, skewPpm, quantile(residuals, 0.5), quantile(residuals, 0.99), residuals.length, quality);
    }

    /** Nearest rank: a value that occurred. */
    private static double quantile(double[] sorted, double share) {
        return sorted[Math.max(0, (int) Math.ceil(share * sorted.length) - 1)];
    }
}
