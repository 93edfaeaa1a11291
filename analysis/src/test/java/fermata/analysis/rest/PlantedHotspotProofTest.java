package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.hotspot.Grouping;
import fermata.analysis.hotspot.HotspotKey;
import fermata.analysis.hotspot.HotspotRanking;
import fermata.analysis.hotspot.RankedHotspot;
import fermata.analysis.hotspot.SolveLosses;
import fermata.analysis.record.StageName;
import fermata.analysis.statistics.Interval;
import fermata.analysis.statistics.Proportion;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.character.Pauses;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Nights of fifty solves by the cook with one weakness planted, and intervals against a very long practice. */
@Tag("proof")
class PlantedHotspotProofTest {
    private static final int NIGHTS = 60;
    private static final int SOLVES = 50;
    private static final List<Performed> REHEARSED = Performed.evening(CuberStyle.cook(), 23, 200);

    /** A weakness, and what should then be ranked first. */
    private enum Planted {
        SLOW_TO_ORIENT(
                new Pauses(0.45, 560_000, 1_300_000, 680_000, 260_000, 140_000, 0.32),
                Grouping.TRANSITION,
                new HotspotKey(Optional.of(StageName.PAIR4), Optional.of(StageName.ORIENT), "", Optional.empty(), "")),
        SLOW_TO_PERMUTE(
                new Pauses(0.45, 560_000, 520_000, 1_400_000, 260_000, 140_000, 0.32),
                Grouping.TRANSITION,
                new HotspotKey(
                        Optional.of(StageName.ORIENT), Optional.of(StageName.PERMUTE), "", Optional.empty(), "")),
        BLIND_TO_PAIRS(
                new Pauses(0.85, 900_000, 520_000, 680_000, 260_000, 140_000, 0.32),
                Grouping.CAUSE,
                new HotspotKey(Optional.empty(), Optional.empty(), "", Optional.of(Cause.LOOK_AHEAD), "")),
        SLOW_TO_REGRIP(
                new Pauses(0.3, 400_000, 450_000, 500_000, 260_000, 380_000, 0.32),
                Grouping.CAUSE,
                new HotspotKey(Optional.empty(), Optional.empty(), "", Optional.of(Cause.REGRIP), ""));

        private final Pauses pauses;
        private final Grouping grouping;
        private final HotspotKey first;

        Planted(Pauses pauses, Grouping grouping, HotspotKey first) {
            this.pauses = pauses;
            this.grouping = grouping;
            this.first = first;
        }
    }

    @ParameterizedTest
    @EnumSource(Planted.class)
    void shouldRankThePlantedHotspotFirstInNineNightsOfTen(Planted planted) {
        CuberStyle usual = CuberStyle.cook();
        CuberStyle weak = new CuberStyle("cook", usual.hand(), usual.habits(), usual.pace(), planted.pauses);
        SplittableRandom random = new SplittableRandom(29);
        Map<String, Integer> firsts = new HashMap<>();
        for (int night = 0; night < NIGHTS; night++) {
            List<RankedHotspot> ranked = HotspotRanking.rank(
                            List.of(losses(night(weak, random))), planted.grouping, random)
                    .ranked();
            firsts.merge(ranked.get(0).key().toString(), 1, Integer::sum);
        }
        int hits = firsts.getOrDefault(planted.first.toString(), 0);
        System.out.println(planted + ": ranked first in " + hits + " of " + NIGHTS + " nights, 95 % "
                + new Proportion(hits, NIGHTS).wilson(0.95) + "; all firsts " + firsts);

        assertThat((double) hits / NIGHTS).as(firsts.toString()).isGreaterThanOrEqualTo(0.9);
    }

    @Test
    void shouldCoverWhatAVeryLongPracticeLosesPerSolve() {
        SplittableRandom random = new SplittableRandom(37);
        Map<HotspotKey, Double> truth = new HashMap<>();
        int longNights = 60;
        for (int night = 0; night < longNights; night++) {
            for (RankedHotspot spot : causes(random)) {
                truth.merge(spot.key(), spot.perSolveMicros() / longNights, Double::sum);
            }
        }
        Map<Cause, int[]> covered = new HashMap<>();
        for (int night = 0; night < NIGHTS * 2; night++) {
            for (RankedHotspot spot : causes(random)) {
                Interval interval = spot.interval();
                int[] counts = covered.computeIfAbsent(spot.key().cause().orElseThrow(), key -> new int[2]);
                counts[0] += interval.contains(truth.getOrDefault(spot.key(), 0.0)) ? 1 : 0;
                counts[1]++;
            }
        }
        int hits = 0;
        int of = 0;
        for (Cause cause : List.of(Cause.LOOK_AHEAD, Cause.RECOGNITION, Cause.ROTATION, Cause.REGRIP)) {
            int[] counts = covered.get(cause);
            hits += counts[0];
            of += counts[1];
            System.out.println(cause.written() + ": covered in " + counts[0] + " of " + counts[1]);
        }
        Proportion share = new Proportion(hits, of);
        System.out.println("95 % intervals of one night cover " + share.share() + ", 95 % " + share.wilson(0.95));

        assertThat(share.share()).isBetween(0.90, 0.98);
    }

    private static List<RankedHotspot> causes(SplittableRandom random) {
        return HotspotRanking.rank(List.of(losses(night(CuberStyle.cook(), random))), Grouping.CAUSE, random)
                .ranked();
    }

    private static List<Performed> night(CuberStyle style, SplittableRandom random) {
        Retiming retiming = new Retiming(Family.AS_MODELLED, style, random);
        List<Performed> night = new ArrayList<>();
        while (night.size() < SOLVES) {
            night.add(retiming.perform(REHEARSED.get(random.nextInt(REHEARSED.size())), night.size()));
        }
        return night;
    }

    private static List<SolveLosses> losses(List<Performed> night) {
        List<PracticedSolve> practiced = RestScore.practiced(night, true);
        Rhythm rhythm = RestReader.learn(practiced, Rhythm.coldStart());
        return practiced.stream()
                .map(solve -> SolveLosses.of(solve, RestReader.read(solve, rhythm)))
                .toList();
    }
}
