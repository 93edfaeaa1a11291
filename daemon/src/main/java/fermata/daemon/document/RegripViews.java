package fermata.daemon.document;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.hand.HandReading;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.regrip.RegripReading;
import fermata.analysis.rhythm.RegripEvidence;
import fermata.analysis.rhythm.RestSnapshot;
import fermata.daemon.json.SolveView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The regrips of a solve for its document.
 *
 * @param regrips those that are worth naming, in order
 * @param count its members are null where nothing is told: the hand is untold, or nobody said which it was
 */
public record RegripViews(List<SolveView.Regrip> regrips, SolveView.RegripCount count) {
    /** Less probable ones count in the sum only. */
    private static final double WORTH_NAMING = 0.05;

    /**
     * Reads them.
     *
     * @param yesterday the rhythm of a day before, or the cold start, with what the solver's calibration says of it:
     *     the night's own would chase itself
     */
    public static RegripViews of(SolveRecord solve, Optional<HandReading> hand, RestSnapshot yesterday) {
        RegripReading reading = hand.map(made -> RegripEvidence.read(
                        solve, HandFacts.of(made, solve.attempt().origin().hand()), yesterday))
                .orElse(RegripReading.NONE);
        if (reading.turns().isEmpty()) {
            return new RegripViews(List.of(), new SolveView.RegripCount(null, null, null));
        }
        List<SolveView.Regrip> regrips = new ArrayList<>();
        for (int turn = 0; turn < reading.turns().size(); turn++) {
            double p = reading.turns().get(turn).probability();
            if (p >= WORTH_NAMING) {
                regrips.add(new SolveView.Regrip(turn, Math.round(p * 1000) / 1000.0));
            }
        }
        return new RegripViews(
                regrips,
                new SolveView.RegripCount(
                        Math.round(reading.expected() * 100) / 100.0,
                        (int) reading.count().low(),
                        (int) reading.count().high()));
    }
}
