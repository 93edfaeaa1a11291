package fermata.analysis.hotspot;

import fermata.analysis.statistics.Interval;
import java.util.List;
import java.util.Objects;

/**
 * A place where time goes.
 *
 * @param key which
 * @param occurrences how many clear rests there were, at least {@link HotspotRanking#NEEDED}
 * @param perSolveMicros expected microseconds lost per solve
 * @param shrunkMicros the same, drawn towards the mean of all places by how unsure it is: what is ranked by
 * @param interval 95 % of {@code perSolveMicros}
 * @param examples the clearest, at most three
 */
public record RankedHotspot(
        HotspotKey key,
        int occurrences,
        double perSolveMicros,
        double shrunkMicros,
        Interval interval,
        List<Loss> examples) {
    public RankedHotspot {
        Objects.requireNonNull(key, "key");
        Objects.requireNonNull(interval, "interval");
        examples = List.copyOf(examples);
    }
}
