package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;

import fermata.analysis.beat.Beat;
import fermata.analysis.beat.Context;
import fermata.analysis.beat.HoldUp;
import fermata.analysis.beat.Place;
import fermata.analysis.beat.Stretch;
import fermata.analysis.rhythm.RestFit;
import fermata.analysis.rhythm.RestSnapshot;
import fermata.analysis.statistics.LogNormal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** A longer beat is never less a rest, whatever rhythm was learned or stored. */
class RestMonotonyTest {
    private static final Place PAIR = new Place(Stretch.PAIR2, HoldUp.PAIR);
    private static final double ROUNDING = 1e-12;

    /** As it could be stored before the fit kept spreads in order; 0.7 s gave 0.996 then, 3 s 0.310, 6 s 0. */
    @Test
    void shouldCallTheLongestPausesRestsWhenAStoredKindIsEvenerThanTheFluentOne() {
        RestSnapshot stored = withSpreads(0.35, 0.20);

        assertThat(Stream.of(700_000L, 3_000_000L, 6_000_000L, 60_000_000L).map(micros -> isRest(stored, PAIR, micros)))
                .isSorted()
                .allSatisfy(probability -> assertThat(probability).isGreaterThan(0.9));
        assertThat(stored.holdUps().get(HoldUp.PAIR.ordinal()).sigma())
                .as("what was stored keeps its values, and so its id")
                .isEqualTo(0.20);
    }

    @Test
    void shouldNeverCallALongerBeatLessARestWhateverTheRhythm() {
        for (int seed = 1; seed <= 500; seed++) {
            RestSnapshot rhythm = anyRhythm(new SplittableRandom(seed));
            for (Stretch stretch : Stretch.values()) {
                for (HoldUp kind : HoldUp.values()) {
                    assertRises(rhythm, new Place(stretch, kind), "seed " + seed + ", " + stretch + ", " + kind);
                }
            }
        }
    }

    /** Pauses as even as a metronome, turns that are not: of these the spread is learned smaller than it may be. */
    @Test
    void shouldLearnNoKindEvenerThanTheFluentOneWhenTheHandRestsLikeAMetronome() {
        for (int seed = 1; seed <= 20; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<Beat> beats = new ArrayList<>();
            for (int index = 0; index < 4_000; index++) {
                boolean isRest = random.nextDouble() < 0.4;
                double log = isRest
                        ? Math.log(900_000) + 0.05 * random.nextGaussian()
                        : Math.log(220_000) + 0.35 * random.nextGaussian();
                beats.add(new Beat(0, Math.round(Math.exp(log)), Context.ADJACENT, PAIR, index / 80));
            }

            RestSnapshot learned = RestFit.learn(beats, RestSnapshot.coldStart());

            assertThat(learned.sigma()).as("seed " + seed).isBetween(0.3, 0.4);
            assertThat(learned.holdUps())
                    .as("seed " + seed)
                    .allSatisfy(kind -> assertThat(kind.sigma()).isGreaterThanOrEqualTo(learned.sigma()));
            assertRises(learned, PAIR, "seed " + seed);
            assertThat(isRest(learned, PAIR, 900_000)).isGreaterThan(0.95);
            assertThat(isRest(learned, PAIR, 20_000_000)).isGreaterThan(0.999);
        }
    }

    private static void assertRises(RestSnapshot rhythm, Place place, String name) {
        double last = 0;
        for (double micros = 5_000; micros < 1e9; micros *= 1.03) {
            double now = isRest(rhythm, place, Math.round(micros));
            assertThat(now).as("%s at %.0f us", name, micros).isGreaterThanOrEqualTo(last - ROUNDING);
            last = now;
        }
        // A quarter of an hour speaks for a rest and not against one, however rare they are there.
        assertThat(last).as(name).isGreaterThan(rhythm.restShare(place));
    }

    private static double isRest(RestSnapshot rhythm, Place place, long micros) {
        return rhythm.read(new Beat(0, micros, Context.ADJACENT, place, 0)).restProbability();
    }

    /** Everything that a fit may give, and what only a stored rhythm can have: each kind of any spread. */
    private static RestSnapshot anyRhythm(SplittableRandom random) {
        RestSnapshot cold = RestSnapshot.coldStart();
        List<LogNormal> kinds = new ArrayList<>();
        for (int kind = 0; kind < HoldUp.values().length; kind++) {
            kinds.add(new LogNormal(random.nextDouble(0.25, 2), random.nextDouble(0.08, 1)));
        }
        List<Double> shares = new ArrayList<>();
        for (int place = 0; place < Place.COUNT; place++) {
            shares.add(random.nextDouble(0.002, 0.998));
        }
        return new RestSnapshot(
                cold.levels(), cold.levelWeights(), 0, 0, 0, random.nextDouble(0.08, 0.6), kinds, shares, 1_000);
    }

    private static RestSnapshot withSpreads(double fluent, double heldUp) {
        RestSnapshot cold = RestSnapshot.coldStart();
        List<LogNormal> kinds = Collections.nCopies(HoldUp.values().length, new LogNormal(0.9, heldUp));
        return new RestSnapshot(cold.levels(), cold.levelWeights(), 0, 0, 0, fluent, kinds, cold.restShares(), 1_000);
    }
}
