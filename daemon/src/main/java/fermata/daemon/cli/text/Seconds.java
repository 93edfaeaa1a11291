package fermata.daemon.cli.text;

import java.util.Locale;

/**
 * Times for people, as WCA 9f1 writes them: a time that was measured is cut to hundredths; a figure that was worked out
 * of several (a mean, a median, a loss, an end of an interval) is brought to the nearest one first. Pages do the same.
 * Stateless.
 */
public final class Seconds {
    private static final long MICROS_PER_HUNDREDTH = 10_000;
    private static final long HUNDREDTHS_PER_MINUTE = 6_000;

    private Seconds() {}

    /** {@code 18.42} or {@code 1:08.42}, of a time that was measured; {@code -} if there is none. */
    public static String of(Long micros) {
        if (micros == null) {
            return "-";
        }
        long hundredths = micros / MICROS_PER_HUNDREDTH;
        long minutes = hundredths / HUNDREDTHS_PER_MINUTE;
        double seconds = (hundredths % HUNDREDTHS_PER_MINUTE) / 100.0;
        return minutes > 0
                ? String.format(Locale.ROOT, "%d:%05.2f", minutes, seconds)
                : String.format(Locale.ROOT, "%.2f", seconds);
    }

    /** The same of a figure that was worked out. */
    public static String ofFigure(Long micros) {
        return of(micros == null ? null : Math.round((double) micros / MICROS_PER_HUNDREDTH) * MICROS_PER_HUNDREDTH);
    }

    /** {@code 1.2}: cut to tenths. */
    static String tenths(long micros) {
        return String.format(Locale.ROOT, "%.1f", micros / 100_000 / 10.0);
    }
}
