package fermata.daemon.json;

import com.fasterxml.jackson.annotation.JsonProperty;
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
        List<TooFew> tooFew,
        SolveView.Derived derived) {
    /**
     * An average at the day's end and its best: whole microseconds, {@code "DNF"}, or null while there are too few.
     */
    public record Averages(Object latest, Object best) {}

    /** Where time goes: expected microseconds per solve with their 95 % interval. What was summed over is null. */
    public record Hotspot(
            String before,
            String after,
            @JsonProperty("case") String caseName,
            String cause,
            String hold,
            long perSolveUs,
            long lowUs,
            long highUs,
            int occurrences,
            List<Example> examples) {}

    /** A clear example: the solve, and when in it. */
    public record Example(String id, long atUs) {}

    /** A place with too few clear rests to rank. */
    public record TooFew(
            String before,
            String after,
            @JsonProperty("case") String caseName,
            String cause,
            String hold,
            int occurrences) {}
}
