package fermata.daemon.json;

import java.util.List;

/** A solver's times as {@code calibrate --json} prints them; docs/formats.md says what each member means. */
public record CalibrationView(String source, String hand, List<Done> exercises, List<Times> times) {
    /** How often an exercise was done. */
    public record Done(String name, String words, int done) {}

    /** The times of one kind of transition. */
    public record Times(
            String kind,
            int count,
            long medianUs,
            List<Long> medianIntervalUs,
            double separation,
            List<Double> separationInterval) {}
}
