package fermata.analysis.rest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import fermata.analysis.beat.Beat;
import fermata.analysis.beat.Context;
import fermata.analysis.beat.HoldUp;
import fermata.analysis.beat.Place;
import fermata.analysis.beat.Stretch;
import fermata.analysis.rhythm.BeatReading;
import fermata.analysis.statistics.LogNormal;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CauseSharingTest {
    private static final Suspicion PAIR = new Suspicion(Circumstance.PAIR_BEGINS, 1);
    private static final Suspicion ROTATION = new Suspicion(Circumstance.ROTATION_READ, 1);
    private static final Suspicion REGRIP = new Suspicion(Circumstance.REGRIP_AFTER_ROTATION, 1);
    private static final Suspicion ANYTHING = new Suspicion(Circumstance.ANYWHERE, 1);

    @Test
    void shouldShareOutAllOfTheExcessWhenSeveralCausesArePossible() {
        for (long excess : new long[] {50_000, 300_000, 900_000, 20_000_000}) {
            List<CauseShare> shares = shares(excess, PAIR, ROTATION, REGRIP, ANYTHING);

            assertThat(shares.stream().mapToDouble(CauseShare::micros).sum()).isCloseTo(excess, within(1.0));
        }
    }

    @Test
    void shouldGiveTheRotationItsUsualPartAndTheRestToLookingWhenBothTookPart() {
        CauseSnapshot causes = CauseSnapshot.coldStart();
        double usual = causes.length(Cause.LOOK_AHEAD).mean()
                + causes.length(Cause.ROTATION).mean();

        List<CauseShare> shares = shares(Math.round(usual), PAIR, ROTATION);

        assertThat(shares.get(0).micros()).isGreaterThan(1.5 * shares.get(1).micros());
        assertThat(shares.get(1).probability()).isGreaterThan(0.9);
    }

    @Test
    void shouldDoubtThatAPairWasSoughtWhenTheRotationAloneExplainsTheRest() {
        assertThat(shares(250_000, PAIR, ROTATION).get(0).probability()).isLessThan(0.5);
        assertThat(shares(1_100_000, PAIR, ROTATION).get(0).probability()).isGreaterThan(0.95);
    }

    @Test
    void shouldLearnHowLongCausesLastWhenTheySeldomComeAlone() {
        SplittableRandom random = new SplittableRandom(21);
        LogNormal looking = new LogNormal(Math.log(900_000), 0.35);
        LogNormal turning = new LogNormal(Math.log(400_000), 0.3);
        List<Suspected> rests = new ArrayList<>();
        for (int index = 0; index < 600; index++) {
            boolean isBoth = index % 3 == 0;
            double rotation = index % 3 == 1 ? 0 : draw(random, turning);
            double look = isBoth || index % 3 == 1 ? draw(random, looking) : 0;
            List<Suspicion> suspicions = index % 3 == 1
                    ? List.of(PAIR, ANYTHING)
                    : isBoth ? List.of(PAIR, ROTATION, ANYTHING) : List.of(ROTATION, ANYTHING);
            Place place = new Place(Stretch.PAIR2, HoldUp.PAIR);
            Beat beat = new Beat(0, Math.round(200_000 + look + rotation), Context.ADJACENT, place, 0);
            rests.add(new Suspected(new BeatReading(beat, 1, 200_000, 0.2), suspicions));
        }

        CauseSnapshot learned = CauseFit.learn(rests, CauseSnapshot.coldStart());

        assertThat(learned.length(Cause.LOOK_AHEAD).mean()).isCloseTo(looking.mean(), within(0.05 * looking.mean()));
        assertThat(learned.length(Cause.ROTATION).mean()).isCloseTo(turning.mean(), within(0.05 * turning.mean()));
    }

    private static double draw(SplittableRandom random, LogNormal length) {
        return Math.exp(length.mu() + length.sigma() * random.nextGaussian());
    }

    private static List<CauseShare> shares(long excess, Suspicion... suspicions) {
        return CauseSharing.of(List.of(suspicions), CauseSnapshot.coldStart(), excess, 1e9)
                .shares();
    }
}
