package fermata.analysis.hotspot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.record.StageName;
import fermata.analysis.rest.Cause;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class HotspotRankingTest {
    @Test
    void shouldRankTheDearestFirstWithItsThreeClearestExamples() {
        List<SolveLosses> night = new ArrayList<>();
        for (int solve = 0; solve < 20; solve++) {
            night.add(new SolveLosses(
                    "s-" + solve,
                    List.of(
                            loss(solve, "pair1", "look-ahead", 300_000),
                            loss(solve, "orient", "recognition", 800_000 + solve))));
        }

        Hotspots found = HotspotRanking.rank(List.of(night), Grouping.CAUSE, new SplittableRandom(1));

        assertThat(found.ranked())
                .extracting(spot -> spot.key().cause())
                .containsExactly(Optional.of(Cause.RECOGNITION), Optional.of(Cause.LOOK_AHEAD));
        RankedHotspot first = found.ranked().get(0);
        assertThat(first.occurrences()).isEqualTo(20);
        assertThat(first.perSolveMicros()).isCloseTo(800_009.5, within(0.1));
        assertThat(first.interval().contains(first.perSolveMicros())).isTrue();
        assertThat(first.examples()).extracting(Loss::solveId).containsExactly("s-19", "s-18", "s-17");
    }

    @Test
    void shouldOnlyCountWhatHasFewerThanFiveClearRests() {
        List<SolveLosses> night = new ArrayList<>();
        for (int solve = 0; solve < 50; solve++) {
            List<Loss> losses = solve < 4
                    ? List.of(loss(solve, "auf", "slip", 9_000_000))
                    : List.of(loss(solve, "pair2", "look-ahead", 200_000));
            night.add(new SolveLosses("s-" + solve, losses));
        }

        Hotspots found = HotspotRanking.rank(List.of(night), Grouping.TRANSITION, new SplittableRandom(1));

        assertThat(found.ranked()).extracting(spot -> spot.key().after()).containsExactly(Optional.of(StageName.PAIR2));
        assertThat(found.tooFew()).extracting(Hotspots.TooFew::occurrences).containsExactly(4);
    }

    @Test
    void shouldDrawAnUnsurePlaceFurtherToTheMeanThanASureOne() {
        List<SolveLosses> night = new ArrayList<>();
        for (int solve = 0; solve < 60; solve++) {
            List<Loss> losses = new ArrayList<>();
            losses.add(loss(solve, "pair3", "regrip", 400_000));
            losses.add(loss(solve, "orient", "regrip", 120_000));
            if (solve % 10 == 0) {
                losses.add(loss(solve, "pair4", "regrip", 4_000_000));
            }
            night.add(new SolveLosses("s-" + solve, losses));
        }

        Hotspots found = HotspotRanking.rank(List.of(night), Grouping.TRANSITION, new SplittableRandom(1));

        assertThat(found.ranked().get(0).key().after()).contains(StageName.PAIR3);
        assertThat(found.ranked())
                .filteredOn(spot -> spot.key().after().equals(Optional.of(StageName.PAIR4)))
                .singleElement()
                .satisfies(spot -> assertThat(spot.shrunkMicros()).isLessThan(spot.perSolveMicros()));
    }

    @Test
    void shouldCountARestOnceWhenTwoCausesAreClear() {
        List<SolveLosses> night = new ArrayList<>();
        for (int solve = 0; solve < 6; solve++) {
            night.add(new SolveLosses(
                    "s-" + solve,
                    List.of(
                            loss(solve, "pair1", "look-ahead", 300_000 + solve),
                            loss(solve, "pair1", "rotation", 200_000))));
        }

        RankedHotspot place = HotspotRanking.rank(List.of(night), Grouping.TRANSITION, new SplittableRandom(1))
                .ranked()
                .get(0);

        assertThat(place.occurrences()).isEqualTo(6);
        assertThat(place.perSolveMicros()).isCloseTo(500_002.5, within(0.1));
        assertThat(place.examples()).extracting(Loss::solveId).containsExactly("s-5", "s-4", "s-3");
        assertThat(place.examples()).extracting(loss -> loss.key().cause()).containsOnly(Optional.of(Cause.LOOK_AHEAD));
    }

    @Test
    void shouldSayNothingWhenThereIsNoSolve() {
        Hotspots found = HotspotRanking.rank(List.of(), Grouping.ALL, new SplittableRandom(1));

        assertThat(found.ranked()).isEmpty();
        assertThat(found.tooFew()).isEmpty();
    }

    private static Loss loss(int solve, String after, String cause, double micros) {
        return new Loss(
                new HotspotKey(
                        Optional.of(StageName.CROSS),
                        Optional.of(StageName.valueOf(after.toUpperCase(Locale.ROOT))),
                        "",
                        Optional.of(Cause.of(cause)),
                        "DF"),
                "s-" + solve,
                7,
                2_100_000,
                micros,
                0.9);
    }
}
