package fermata.analysis.hotspot;

import fermata.analysis.statistics.NestedBootstrap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.random.RandomGenerator;

/**
 * Ranks where time goes, most first; what has too few clear rests is only counted.
 *
 * <p>The solves of one ranking are of one {@link Series}. Pure but for the generator; the same seed gives the same
 * ranking.
 */
public final class HotspotRanking {
    /** Clear rests it takes to rank a place. */
    public static final int NEEDED = 5;

    private static final int DRAWS = 4_000_000;
    private static final int FEWEST_RESAMPLES = 199;
    private static final int MOST_RESAMPLES = 999;

    private HotspotRanking() {}

    /**
     * The whole ranking, for solves that are in memory anyway; see {@link HotspotLedger}.
     *
     * @param nights the losses of each night's solves; a solve without a loss counts too
     */
    public static Hotspots rank(List<List<SolveLosses>> nights, Grouping grouping, RandomGenerator random) {
        HotspotLedger ledger = new HotspotLedger(grouping);
        for (List<SolveLosses> night : nights) {
            ledger.beginNight();
            night.forEach(solve -> ledger.add(solve.losses()));
        }
        return ledger.rank(Integer.MAX_VALUE, random);
    }

    static Hotspots rank(List<PlaceSums> places, int[] nightEnds, int most, RandomGenerator random) {
        List<Hotspots.TooFew> tooFew = places.stream()
                .filter(place -> place.clear() > 0 && place.clear() < NEEDED)
                .map(place -> new Hotspots.TooFew(place.key(), place.clear()))
                .sorted(Comparator.comparingInt(Hotspots.TooFew::occurrences).reversed())
                .toList();
        int solves = nightEnds[nightEnds.length - 1];
        int resamples = Math.max(FEWEST_RESAMPLES, Math.min(MOST_RESAMPLES, DRAWS / solves));
        NestedBootstrap bootstrap = new NestedBootstrap(resamples, random);
        List<RankedHotspot> ranked = new ArrayList<>();
        for (Shrunk place : shrink(places, nightEnds)) {
            if (ranked.size() < most) {
                ranked.add(new RankedHotspot(
                        place.sums.key(),
                        place.sums.clear(),
                        place.spread.mean(),
                        place.micros,
                        new NightMeans(place.sums.nights(nightEnds)).interval(bootstrap),
                        place.sums.examples()));
            }
        }
        return new Hotspots(ranked, tooFew);
    }

    private record Shrunk(PlaceSums sums, NightMeans.Spread spread, double micros) {}

    /**
     * Towards the mean of all ranked places, by the share of what is seen that is chance (Efron, Morris 1975); dearest
     * first.
     */
    private static List<Shrunk> shrink(List<PlaceSums> places, int[] nightEnds) {
        List<Shrunk> found = places.stream()
                .filter(place -> place.clear() >= NEEDED)
                .map(place -> new Shrunk(place, place.spread(nightEnds), 0))
                .toList();
        double centre = found.stream()
                .mapToDouble(place -> place.spread.mean())
                .average()
                .orElse(0);
        double seen = found.stream()
                        .mapToDouble(place -> (place.spread.mean() - centre) * (place.spread.mean() - centre))
                        .sum()
                / Math.max(1, found.size() - 1);
        double chance = found.stream()
                .mapToDouble(place -> place.spread.varianceOfMean())
                .average()
                .orElse(0);
        double real = Math.max(0, seen - chance);
        return found.stream()
                .map(place -> new Shrunk(place.sums, place.spread, shrunk(place.spread, centre, real)))
                .sorted(Comparator.comparingDouble(Shrunk::micros).reversed())
                .toList();
    }

    private static double shrunk(NightMeans.Spread spread, double centre, double real) {
        double own = spread.varianceOfMean();
        double kept = real + own > 0 ? real / (real + own) : 1;
        return centre + kept * (spread.mean() - centre);
    }
}
