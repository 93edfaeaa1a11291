package fermata.analysis.lookahead;

import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.beat.Stretch;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.analysis.rest.ExplainedRest;
import fermata.analysis.rest.RestReading;
import fermata.decoder.cube.Face;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Looks at each pair or block of a solve: could it have been found while the stage before was being turned?
 *
 * <p>Nothing is remembered from before that stage began; a pair is needed when its last turn came. A block counts as
 * found when all five of its pieces are, which is more than a hand needs to begin it. The cross, the last layer and
 * what other methods end with are not looked at. Pure; thread-safe. Cost: up to three looks a turn.
 */
public final class LookAhead {
    /** How long before it was needed a pair must have been identifiable, unless said otherwise. */
    public static final long MARGIN_MICROS = 300_000;

    private static final String MODEL = """
            Watching begins when the stage before begins; nothing is remembered from before that, so a pair found in \
            inspection reads as one that could not be known. In view are the top, the front less what the thumb \
            covers, and the side away from the palm. A pair is known when two stickers show its corner and two its \
            edge, or when every other place is excluded. It is needed when the last turn of the stage before is done, \
            and counts as found in time from %s s before that.""";

    private LookAhead() {}

    /**
     * The model in words, to stand wherever its findings are shown.
     *
     * @param marginMicros as for {@link #read}
     */
    public static String model(long marginMicros) {
        String seconds =
                BigDecimal.valueOf(marginMicros, 6).stripTrailingZeros().toPlainString();
        return String.format(Locale.ROOT, MODEL, seconds);
    }

    /**
     * One finding for every pair or block that is timed and has a stage before it.
     *
     * @param rests the reading of the same solve
     * @param marginMicros so long before it is needed a pair must be identifiable; usually {@link #MARGIN_MICROS}
     */
    public static List<LookAheadFinding> read(PracticedSolve solve, RestReading rests, long marginMicros) {
        if (marginMicros < 0) {
            throw new IllegalArgumentException(
                    "a margin of " + marginMicros + " us lies after the need; take 0 or more");
        }
        SolveRecord record = solve.record();
        List<StageRecord> stages = record.stages().stream()
                .filter(stage -> !stage.span().isEmpty())
                .toList();
        List<LookAheadFinding> findings = new ArrayList<>();
        for (int place = 1; place < stages.size() && record.isTimed(); place++) {
            StageRecord stage = stages.get(place);
            Optional<ExplainedRest> rest = restBefore(rests, stage.span().from());
            if (Stretch.of(stage.name()).isSought() && rest.isPresent()) {
                findings.add(find(solve, stages.subList(place - 1, stages.size()), rest.get(), marginMicros));
            }
        }
        return findings;
    }

    private static Optional<ExplainedRest> restBefore(RestReading rests, int turn) {
        return rests.beats().stream()
                .filter(beat -> beat.afterTurn() == turn - 1)
                .findFirst();
    }

    /** {@code stages} begins with the stage before the one that is looked for. */
    private static LookAheadFinding find(
            PracticedSolve solve, List<StageRecord> stages, ExplainedRest rest, long margin) {
        StageRecord stage = stages.get(1);
        Face below = below(solve.record(), stage);
        Watch watch = new Watch(solve, stages.get(0).span());
        Wanted wanted = Wanted.of(stage, below);
        long lead = watch.leadMicros(wanted, View.PLAIN);
        List<Face> sooner = List.of();
        long soonest = Math.max(0, lead) + margin;
        for (StageRecord other : stages.subList(2, stages.size())) {
            boolean isAlike = Stretch.of(other.name()).isSought()
                    && other.faces().size() == stage.faces().size();
            long otherLead = isAlike ? watch.leadMicros(Wanted.of(other, below), View.PLAIN) : Watch.NEVER;
            if (otherLead >= soonest) {
                soonest = otherLead;
                sooner = other.faces();
            }
        }
        return new LookAheadFinding(
                stage.name(),
                stage.faces(),
                stage.span().from(),
                outlook(watch, wanted, lead, margin),
                rest,
                sooner,
                sooner.isEmpty() ? 0 : soonest,
                watch.holdProbability());
    }

    private static Face below(SolveRecord record, StageRecord stage) {
        return record.crossFace().orElseGet(() -> stage.faces().get(1));
    }

    private static Outlook outlook(Watch watch, Wanted wanted, long lead, long margin) {
        if (lead >= margin) {
            return new Outlook.Identifiable(lead, watch.isByElimination(wanted));
        }
        Wanted hidden = watch.hidden(wanted, margin);
        for (View tilt : List.of(View.SIDE_TILT, View.BACK_TILT)) {
            long withTilt = watch.leadMicros(wanted, tilt);
            if (withTilt >= margin) {
                return new Outlook.WithTilt(tilt, withTilt, hidden);
            }
        }
        return new Outlook.Hidden(hidden);
    }
}
