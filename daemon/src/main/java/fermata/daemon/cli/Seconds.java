package fermata.daemon.cli;

import java.util.Locale;

/** Times for people. Stateless. */
final class Seconds {
    private static final long MICROS_PER_HUNDREDTH = 10_000;
    private static final long HUNDREDTHS_PER_MINUTE = 6_000;

    private Seconds() {}

    /**
     * {@code 18.42} or {@code 1:08.42}: cut, not rounded, to hundredths as WCA 9f1 has it; {@code -} if there is
     * none.
     */
    static String of(Long micros) {
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

    /** {@code 1.2}: cut to tenths. */
    static String tenths(long micros) {
        return String.format(Locale.ROOT, "%.1f", micros / 100_000 / 10.0);
    }
}
