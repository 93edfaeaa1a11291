package fermata.analysis.lookahead;

import fermata.analysis.beat.Stretch;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.analysis.rest.ExplainedRest;
import fermata.analysis.rest.RestReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * A rest that is more likely than not, and whether it is a fermata.
 *
 * @param rest which, with its causes
 * @param startMicros when it began, since the solve's first turn
 * @param judgement whether it is a fermata
 */
public record JudgedRest(ExplainedRest rest, long startMicros, FermataJudgement judgement) {
    /** From this probability on a rest is told of. */
    public static final double LIKELY = 0.5;
    /** What is beyond the usual pace by less is not told of. */
    public static final long LEAST_EXCESS_MICROS = 100_000;

    public JudgedRest {
        Objects.requireNonNull(rest, "rest");
        Objects.requireNonNull(judgement, "judgement");
        if (startMicros < 0) {
            throw new IllegalArgumentException("a rest that begins at " + startMicros + " us, before the first turn");
        }
    }

    /** The rests of a solve that are likely and long enough, in order. */
    public static List<JudgedRest> of(SolveRecord solve, RestReading reading, List<LookAheadFinding> findings) {
        List<JudgedRest> rests = new ArrayList<>();
        for (ExplainedRest beat : reading.beats()) {
            if (beat.reading().restProbability() >= LIKELY && beat.reading().excessMicros() >= LEAST_EXCESS_MICROS) {
                long start = solve.turns().get(beat.afterTurn()).atMicros();
                rests.add(new JudgedRest(beat, start, judge(solve, beat.afterTurn() + 1, findings)));
            }
        }
        return rests;
    }

    /** Whether it is sure enough to be called a rest of at least {@link LookAheadFinding#REST_MICROS}. */
    public boolean isCalled() {
        return rest.reading().isRestOfAtLeast(LookAheadFinding.REST_MICROS);
    }

    private static FermataJudgement judge(SolveRecord solve, int turn, List<LookAheadFinding> findings) {
        Optional<StageRecord> stage = solve.stages().stream()
                .filter(each -> each.span().contains(turn))
                .findFirst();
        if (stage.isEmpty()) {
            return FermataJudgement.NO_STAGES;
        }
        Stretch stretch = Stretch.of(stage.get().name());
        if (!stretch.isSought()) {
            return stretch == Stretch.OPENING ? FermataJudgement.OPENING : FermataJudgement.LAST_LAYER;
        }
        return findings.stream()
                .filter(finding -> finding.beforeTurn() == turn)
                .findFirst()
                .map(JudgedRest::judge)
                .orElse(FermataJudgement.NONE);
    }

    private static FermataJudgement judge(LookAheadFinding finding) {
        if (finding.isFermata()) {
            return FermataJudgement.FERMATA;
        }
        boolean isUnproved = finding.isBlock() && !(finding.outlook() instanceof Outlook.Identifiable);
        return isUnproved ? FermataJudgement.BLOCK : FermataJudgement.NONE;
    }
}
