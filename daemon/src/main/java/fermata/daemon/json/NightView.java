package fermata.daemon.json;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;

/**
 * A practice day, the week up to it or all days up to it, as {@code night --json} prints it; docs/formats.md says what
 * each member means. A time is null while there are too few solves.
 *
 * @param hotspots by change, by cause, by both, by everything; dearest first within each
 */
public record NightView(
        String day,
        String over,
        String from,
        String to,
        int nights,
        Series series,
        int solves,
        int abandoned,
        Long bestUs,
        Long meanUs,
        Long spreadUs,
        Averages average5Us,
        Averages trimmed12Us,
        List<Stage> stages,
        List<Hotspot> hotspots,
        List<TooFew> tooFew,
        List<Trend> trends,
        Load load,
        List<OtherSeries> otherSeries,
        SolveView.Derived derived) {
    /** What it is about. */
    public record Series(String hand, String method) {}

    /**
     * An average at the end and the best one: whole microseconds, {@code "DNF"}, or null while there are too few.
     */
    public record Averages(Object latest, Object best) {}

    /** A stage's median, and its share of all the time. */
    public record Stage(String name, long medianUs, double share) {}

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
            String sentence,
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
            int occurrences,
            String sentence) {}

    /** How a nightly figure moves: {@code moves}, {@code none_seen} or {@code too_few}. */
    public record Trend(
            String figure,
            String says,
            Long perDayUs,
            Long lowUs,
            Long highUs,
            int nights,
            int needed,
            String sentence) {}

    /** What the hand did. */
    public record Load(long turns, long regrips, double minutes, double longestStretchMinutes, List<String> advice) {}

    /** Solves that are not compared with these. */
    public record OtherSeries(
            String hand,
            String method,
            boolean otherSolver,
            boolean otherCube,
            boolean setAside,
            int solves,
            long meanUs) {}
}
