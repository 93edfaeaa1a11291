package fermata.analysis.hotspot;

import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.analysis.rest.CauseShare;
import fermata.analysis.rest.ExplainedRest;
import fermata.analysis.rest.HandFacts;
import fermata.analysis.rest.PracticedSolve;
import fermata.analysis.rest.RestReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * All losses of a solve.
 *
 * @param solveId the solve
 * @param losses one for each beat and cause worth a millisecond or more
 */
public record SolveLosses(String solveId, List<Loss> losses) {
    private static final double WORTH_MICROS = 1_000;
    private static final String UNKNOWN_HOLD = "?";

    public SolveLosses {
        Objects.requireNonNull(solveId, "solveId");
        losses = List.copyOf(losses);
    }

    /** The losses of a solve, from the reading of its rests. */
    public static SolveLosses of(PracticedSolve solve, RestReading rests) {
        List<Loss> losses = new ArrayList<>();
        for (ExplainedRest beat : rests.beats()) {
            for (CauseShare share : beat.shares()) {
                double probability = beat.reading().restProbability();
                double micros = probability * share.micros();
                if (micros >= WORTH_MICROS) {
                    HotspotKey key =
                            key(solve, beat.afterTurn() + 1, share.cause().written());
                    double clarity = Math.min(1, probability * share.probability());
                    long atMicros = solve.record().turns().get(beat.afterTurn()).atMicros();
                    losses.add(new Loss(key, rests.solveId(), beat.afterTurn(), atMicros, micros, clarity));
                }
            }
        }
        return new SolveLosses(rests.solveId(), losses);
    }

    private static HotspotKey key(PracticedSolve solve, int turn, String cause) {
        SolveRecord record = solve.record();
        String before = "";
        String after = "";
        String caseName = "";
        for (StageRecord stage : record.stages()) {
            if (stage.span().contains(turn - 1)) {
                before = stage.name().written();
            }
            if (stage.span().contains(turn)) {
                after = stage.name().written();
                caseName = stage.caseName();
            }
        }
        HandFacts hand = solve.hand();
        String hold = hand.isRead() ? hand.turns().get(turn).hold().letters() : UNKNOWN_HOLD;
        return new HotspotKey(before, after, caseName, cause, hold);
    }
}
