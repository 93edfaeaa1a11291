package fermata.daemon.json;

import java.util.List;

/**
 * A practice day as {@code night --json} prints it; docs/formats.md says what each member means. A time is null while
 * there are too few solves.
 */
public record NightView(
        String day,
        int solves,
        int abandoned,
        Long bestUs,
        Long meanUs,
        Long spreadUs,
        Averages average5Us,
        Averages trimmed12Us,
        List<Hotspot> hotspots,
        SolveView.Derived derived) {
    /**
     * An average at the day's end and its best: whole microseconds, {@code "DNF"}, or null while there are too few.
     */
    public record Averages(Object latest, Object best) {}

    /** The rests at one change of stages. */
    public record Hotspot(String before, String after, int count, Long restUs) {}
}
