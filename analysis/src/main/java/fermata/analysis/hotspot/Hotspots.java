package fermata.analysis.hotspot;

import java.util.List;
import java.util.Objects;

/**
 * Where time goes.
 *
 * @param ranked dearest first
 * @param tooFew places with too few clear rests to rank, most first
 */
public record Hotspots(List<RankedHotspot> ranked, List<TooFew> tooFew) {
    /**
     * A place that cannot be ranked yet.
     *
     * @param key which
     * @param occurrences how many clear rests there were, from 1
     */
    public record TooFew(HotspotKey key, int occurrences) {
        public TooFew {
            Objects.requireNonNull(key, "key");
        }
    }

    public Hotspots {
        ranked = List.copyOf(ranked);
        tooFew = List.copyOf(tooFew);
    }
}
