package fermata.analysis.hotspot;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.beat.TurnSpan;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageName;
import fermata.analysis.record.StageRecord;
import fermata.analysis.rest.Cause;
import fermata.analysis.rest.CauseShare;
import fermata.analysis.rest.ExplainedRest;
import fermata.analysis.rest.RestReading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * All losses of a solve.
 *
 * @param solveId the solve
 * @param losses one for each beat and cause worth a millisecond or more, in the order of the turns; a slip is one loss,
 *     however many beats it held up
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
                    HotspotKey key = key(solve, beat.afterTurn() + 1, share.cause());
                    double clarity = Math.min(1, probability * share.probability());
                    long atMicros = solve.record().turns().get(beat.afterTurn()).atMicros();
                    losses.add(new Loss(key, rests.solveId(), beat.afterTurn(), atMicros, micros, clarity));
                }
            }
        }
        return new SolveLosses(rests.solveId(), slipsOnce(losses, rests.slips()));
    }

    /** What a slip cost is filed where most of it was lost. */
    private static List<Loss> slipsOnce(List<Loss> losses, List<TurnSpan> slips) {
        List<Loss> once = new ArrayList<>(losses);
        for (TurnSpan slip : slips) {
            List<Loss> own = losses.stream().filter(loss -> isOf(slip, loss)).toList();
            if (own.size() > 1) {
                Loss dearest = own.stream()
                        .max(Comparator.comparingDouble(Loss::micros))
                        .orElseThrow();
                double micros = own.stream().mapToDouble(Loss::micros).sum();
                double clarity = own.stream().mapToDouble(Loss::clarity).max().orElseThrow();
                once.set(once.indexOf(dearest), dearest.of(micros, clarity));
                once.removeAll(own);
            }
        }
        return once;
    }

    /** A slip holds up each of its turns but the first, and the one after it. */
    private static boolean isOf(TurnSpan slip, Loss loss) {
        int turn = loss.afterTurn() + 1;
        return loss.key().cause().filter(cause -> cause == Cause.SLIP).isPresent()
                && slip.turns().from() < turn
                && turn <= slip.turns().to();
    }

    private static HotspotKey key(PracticedSolve solve, int turn, Cause cause) {
        SolveRecord record = solve.record();
        Optional<StageName> before = Optional.empty();
        Optional<StageName> after = Optional.empty();
        String caseName = "";
        for (StageRecord stage : record.stages()) {
            if (stage.span().contains(turn - 1)) {
                before = Optional.of(stage.name());
            }
            if (stage.span().contains(turn)) {
                after = Optional.of(stage.name());
                caseName = stage.caseName();
            }
        }
        HandFacts hand = solve.hand();
        String hold = hand.isRead() ? hand.turns().get(turn).hold().letters() : UNKNOWN_HOLD;
        return new HotspotKey(before, after, caseName, Optional.of(cause), hold);
    }
}
