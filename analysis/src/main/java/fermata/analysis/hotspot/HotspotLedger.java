package fermata.analysis.hotspot;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;

/**
 * Adds losses up under one grouping, solve after solve, without keeping the solves: a year takes some tens of
 * megabytes. The solves of one ledger are of one {@link Series}. Not thread-safe.
 */
public final class HotspotLedger {
    private final Grouping grouping;
    private final Map<HotspotKey, PlaceSums> places = new LinkedHashMap<>();
    private int[] nightEnds = new int[0];
    private int solves;

    /** An empty ledger. */
    public HotspotLedger(Grouping grouping) {
        this.grouping = grouping;
    }

    /** The solves that follow belong to another night than those before. */
    public void beginNight() {
        nightEnds = Arrays.copyOf(nightEnds, nightEnds.length + 1);
        nightEnds[nightEnds.length - 1] = solves;
    }

    /** Adds a solve; one without a loss counts too. */
    public void add(List<Loss> losses) {
        if (nightEnds.length == 0) {
            throw new IllegalStateException("a solve before the first night began");
        }
        for (Loss loss : losses) {
            if (grouping.counts(loss.key())) {
                places.computeIfAbsent(grouping.of(loss.key()), PlaceSums::new).add(solves, loss);
            }
        }
        nightEnds[nightEnds.length - 1] = ++solves;
    }

    /** How many solves were added. */
    public int solves() {
        return solves;
    }

    /** Microseconds lost at each place per solve, ranked or not. */
    public Map<HotspotKey, Double> perSolveMicros() {
        Map<HotspotKey, Double> means = new LinkedHashMap<>();
        places.forEach((key, sums) -> means.put(key, sums.total() / solves));
        return means;
    }

    /**
     * The places, dearest first.
     *
     * <p>Cost: for each of the places that are given, resamples times solves; resamples fall from 999 to 199 as solves
     * grow.
     *
     * @param most how many ranked places to give at most
     * @param random for the intervals; the same seed gives the same ones
     */
    public Hotspots rank(int most, RandomGenerator random) {
        return solves == 0
                ? new Hotspots(List.of(), List.of())
                : HotspotRanking.rank(List.copyOf(places.values()), nightEnds, most, random);
    }
}
