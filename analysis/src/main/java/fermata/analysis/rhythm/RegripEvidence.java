package fermata.analysis.rhythm;

import fermata.analysis.beat.Beat;
import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.HoldUp;
import fermata.analysis.beat.Place;
import fermata.analysis.beat.Timeline;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.regrip.RegripReading;
import fermata.analysis.statistics.LogNormal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * What the rhythm says of regrips: a beat that ran on fluently had hardly time for one. Takes a rhythm that is frozen
 * already, yesterday's or the cold start. Nothing is said where a stage begins, at a rotation and inside a slip: there
 * a hand is slow for other reasons. Stateless.
 */
public final class RegripEvidence {
    /** No single beat may outweigh all that the turns themselves say. */
    private static final double STRONGEST = 3;

    private RegripEvidence() {}

    /** The regrips of a solve, by the fingers and the times. Cost: linear in turns. */
    public static RegripReading read(SolveRecord solve, HandFacts hand, RestSnapshot yesterday) {
        Timeline timeline = Timeline.withoutRegrips(solve, hand);
        List<Double> ratios = new ArrayList<>(Collections.nCopies(solve.turns().size(), 0.0));
        for (Beat beat : timeline.beats(0)) {
            if (beat.place().holdUp() == HoldUp.INSIDE) {
                ratios.set(beat.afterTurn() + 1, logRatio(beat, yesterday));
            }
        }
        return hand.heard(timeline.starts(), ratios).regrips(hand.hand());
    }

    private static double logRatio(Beat beat, RestSnapshot yesterday) {
        double above = RestFit.logOf(beat.micros()) - yesterday.fluentLog(beat.context(), 0);
        // Far below the fluent median the wider kind would claim the fastest turns.
        above = Math.max(-yesterday.sigma(), above);
        LogNormal regrip = yesterday.heldUp(HoldUp.REGRIP);
        LogNormal other = yesterday.heldUp(HoldUp.INSIDE);
        double share = yesterday.restShare(new Place(beat.place().stretch(), HoldUp.INSIDE));
        double without = (1 - share) * Math.exp(new LogNormal(0, yesterday.sigma()).logDensityOfLog(above))
                + share * Math.exp(other.logDensityOfLog(above));
        double with = Math.exp(regrip.logDensityOfLog(above));
        return Math.max(-STRONGEST, Math.min(STRONGEST, Math.log(with / without)));
    }
}
