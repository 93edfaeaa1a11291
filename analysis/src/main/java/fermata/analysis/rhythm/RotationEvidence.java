package fermata.analysis.rhythm;

import fermata.analysis.beat.Beat;
import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.HoldUp;
import fermata.analysis.beat.Place;
import fermata.analysis.beat.Timeline;
import fermata.analysis.event.Hand;
import fermata.analysis.hold.HoldEvidence;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.statistics.LogNormal;
import fermata.decoder.orientation.Orientation;

/**
 * What the rhythm says of rotations, for whoever infers holds: a beat that ran on fluently had no time for one.
 *
 * <p>Takes a rhythm that is frozen already, yesterday's, so that holds and rhythm never chase each other within a
 * night. Immutable; thread-safe.
 */
public final class RotationEvidence implements HoldEvidence {
    /** No single beat may outweigh all that the turns themselves say. */
    private static final double STRONGEST = 3;

    private final double[] logRatios;

    private RotationEvidence(double[] logRatios) {
        this.logRatios = logRatios;
    }

    /** The evidence of a solve's beats; nothing is said where there is none. */
    public static RotationEvidence of(SolveRecord solve, Hand hand, RestSnapshot yesterday) {
        double[] ratios = new double[solve.turns().size()];
        for (Beat beat :
                Timeline.withoutRegrips(solve, HandFacts.guess(solve, hand)).beats(0)) {
            ratios[beat.afterTurn() + 1] = logRatio(beat, yesterday);
        }
        return new RotationEvidence(ratios);
    }

    private static double logRatio(Beat beat, RestSnapshot yesterday) {
        double fluent = yesterday.fluentLog(beat.context(), 0);
        double above = Math.max(0, RestFit.logOf(beat.micros()) - fluent);
        Place rotated =
                new Place(beat.place().stretch(), withRotation(beat.place().holdUp()));
        double ratio = logDensity(rotated, above, yesterday) - logDensity(beat.place(), above, yesterday);
        return Math.max(-STRONGEST, Math.min(STRONGEST, ratio));
    }

    private static HoldUp withRotation(HoldUp holdUp) {
        return switch (holdUp) {
            case INSIDE, REGRIP, ROTATION, SLIP -> HoldUp.ROTATION;
            case PAIR, PAIR_ROTATION -> HoldUp.PAIR_ROTATION;
            case CASE, CASE_ROTATION -> HoldUp.CASE_ROTATION;
        };
    }

    private static double logDensity(Place place, double above, RestSnapshot yesterday) {
        double share = yesterday.restShare(place);
        LogNormal slow = yesterday.heldUp(place.holdUp());
        LogNormal fluent = new LogNormal(0, yesterday.sigma());
        return Math.log(
                share * Math.exp(slow.logDensityOfLog(above)) + (1 - share) * Math.exp(fluent.logDensityOfLog(above)));
    }

    @Override
    public double ofRotation(int beforeTurn, Orientation rotation) {
        return logRatios[beforeTurn];
    }
}
