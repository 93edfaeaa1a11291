package fermata.daemon.json;

import java.util.List;

/** A solver's times as {@code calibrate --json} prints them; docs/formats.md says what each member means. */
public record CalibrationView(String source, String hand, boolean kept, List<Done> exercises, List<Times> times) {
    /** How often an exercise was done. */
    public record Done(String name, String words, int done) {}

    /** The same, with whether it is kept. */
    public CalibrationView kept(boolean isKept) {
        return new CalibrationView(source, hand, isKept, exercises, times);
    }

    /** The times of one kind of transition. */
    public record Times(
            String kind,
            int count,
            long medianUs,
            List<Long> medianIntervalUs,
            double separation,
            List<Double> separationInterval) {}
}
