package fermata.analysis.hotspot;

import fermata.analysis.statistics.NestedBootstrap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.random.RandomGenerator;

/**
 * Ranks where time goes, most first; what has too few clear rests is only counted.
 *
 * <p>The solves of one ranking are of one {@link Series}. Pure but for the generator; the same seed gives the same
 * ranking. Cost: resamples times solves for each place; resamples fall from 999 to 199 as solves grow.
 */
public final class HotspotRanking {
    /** Clear rests it takes to rank a place. */
    public static final int NEEDED = 5;

    private static final double CLEAR_FROM = 0.5;
    private static final double CLEAR_MICROS = 100_000;
    private static final int EXAMPLES = 3;
    private static final int DRAWS = 4_000_000;
    private static final int FEWEST_RESAMPLES = 199;
    private static final int MOST_RESAMPLES = 999;

    private HotspotRanking() {}

    /**
     * The ranking.
     *
     * @param nights the losses of each night's solves; a solve without a loss counts too
     */
    public static Hotspots rank(List<List<SolveLosses>> nights, Grouping grouping, RandomGenerator random) {
        int solves = nights.stream().mapToInt(List::size).sum();
        if (solves == 0) {
            return new Hotspots(List.of(), List.of());
        }
        Map<HotspotKey, List<Loss>> losses = losses(nights, grouping);
        List<Hotspots.TooFew> tooFew = new ArrayList<>();
        losses.forEach((key, of) -> {
            if (clear(of) > 0 && clear(of) < NEEDED) {
                tooFew.add(new Hotspots.TooFew(key, clear(of)));
            }
        });
        tooFew.sort(Comparator.comparingInt(Hotspots.TooFew::occurrences).reversed());
        losses.values().removeIf(of -> clear(of) < NEEDED);
        int resamples = Math.max(FEWEST_RESAMPLES, Math.min(MOST_RESAMPLES, DRAWS / solves));
        List<RankedHotspot> ranked =
                measured(losses, values(nights, grouping, losses), new NestedBootstrap(resamples, random));
        ranked.sort(Comparator.comparingDouble(RankedHotspot::shrunkMicros).reversed());
        return new Hotspots(ranked, tooFew);
    }

    private static Map<HotspotKey, List<Loss>> losses(List<List<SolveLosses>> nights, Grouping grouping) {
        Map<HotspotKey, List<Loss>> losses = new LinkedHashMap<>();
        for (List<SolveLosses> night : nights) {
            for (SolveLosses solve : night) {
                for (Loss loss : solve.losses()) {
                    if (grouping.counts(loss.key())) {
                        losses.computeIfAbsent(grouping.of(loss.key()), key -> new ArrayList<>())
                                .add(loss);
                    }
                }
            }
        }
        return losses;
    }

    private static List<RankedHotspot> measured(
            Map<HotspotKey, List<Loss>> losses, Map<HotspotKey, List<double[]>> values, NestedBootstrap bootstrap) {
        List<RankedHotspot> found = new ArrayList<>();
        List<NightMeans> means = new ArrayList<>();
        losses.forEach((key, of) -> {
            NightMeans mean = new NightMeans(values.get(key));
            means.add(mean);
            found.add(new RankedHotspot(
                    key, clear(of), mean.mean(), mean.mean(), mean.interval(bootstrap), examples(of)));
        });
        return shrink(found, means);
    }

    /** For each place the microseconds of every solve, night by night. */
    private static Map<HotspotKey, List<double[]>> values(
            List<List<SolveLosses>> nights, Grouping grouping, Map<HotspotKey, List<Loss>> losses) {
        Map<HotspotKey, List<double[]>> values = new HashMap<>();
        for (HotspotKey key : losses.keySet()) {
            values.put(
                    key, nights.stream().map(night -> new double[night.size()]).toList());
        }
        for (int night = 0; night < nights.size(); night++) {
            for (int solve = 0; solve < nights.get(night).size(); solve++) {
                for (Loss loss : nights.get(night).get(solve).losses()) {
                    List<double[]> place = values.get(grouping.of(loss.key()));
                    if (place != null) {
                        place.get(night)[solve] += loss.micros();
                    }
                }
            }
        }
        return values;
    }

    private static int clear(List<Loss> losses) {
        return (int) losses.stream().filter(HotspotRanking::isClear).count();
    }

    private static boolean isClear(Loss loss) {
        return loss.clarity() >= CLEAR_FROM && loss.micros() >= CLEAR_MICROS;
    }

    private static List<Loss> examples(List<Loss> losses) {
        return losses.stream()
                .filter(HotspotRanking::isClear)
                .sorted(Comparator.comparingDouble((Loss loss) -> loss.clarity() * loss.micros())
                        .reversed())
                .limit(EXAMPLES)
                .toList();
    }

    /** Towards the mean of all ranked places, by the share of what is seen that is chance (Efron, Morris 1975). */
    private static List<RankedHotspot> shrink(List<RankedHotspot> found, List<NightMeans> means) {
        double centre = found.stream()
                .mapToDouble(RankedHotspot::perSolveMicros)
                .average()
                .orElse(0);
        double seen = found.stream()
                        .mapToDouble(spot -> (spot.perSolveMicros() - centre) * (spot.perSolveMicros() - centre))
                        .sum()
                / Math.max(1, found.size() - 1);
        double chance =
                means.stream().mapToDouble(NightMeans::varianceOfMean).average().orElse(0);
        double real = Math.max(0, seen - chance);
        List<RankedHotspot> shrunk = new ArrayList<>();
        for (int place = 0; place < found.size(); place++) {
            RankedHotspot spot = found.get(place);
            double own = means.get(place).varianceOfMean();
            double kept = real + own > 0 ? real / (real + own) : 1;
            shrunk.add(new RankedHotspot(
                    spot.key(),
                    spot.occurrences(),
                    spot.perSolveMicros(),
                    centre + kept * (spot.perSolveMicros() - centre),
                    spot.interval(),
                    spot.examples()));
        }
        return shrunk;
    }
}
