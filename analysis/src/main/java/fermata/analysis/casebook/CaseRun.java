package fermata.analysis.casebook;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageName;
import fermata.analysis.record.StageRecord;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/**
 * One solve's way through one case. An AUF before a last-layer sequence belongs to recognising.
 *
 * @param stage the stage that met it
 * @param caseName its number or letter
 * @param atMicros when the stage before had ended, from the first turn of the solve
 * @param recognitionMicros from the end of the stage before to the first turn after an AUF
 * @param executionMicros from there to the last turn
 * @param turnsPerSecond of the execution; half turns count once, slices twice (HTM)
 * @param sequence as the hand did it where holds are known, else as the centres felt it
 */
public record CaseRun(
        StageName stage,
        String caseName,
        long atMicros,
        double recognitionMicros,
        double executionMicros,
        double turnsPerSecond,
        String sequence) {
    private static final double SECOND = 1e6;
    private static final int LONGEST_AUF = 2;
    private static final String NOTHING_TO_DO = "skip";

    public CaseRun {
        Objects.requireNonNull(stage, "stage");
        Objects.requireNonNull(caseName, "caseName");
        Objects.requireNonNull(sequence, "sequence");
        if (!(recognitionMicros >= 0) || !(executionMicros >= 0) || !(turnsPerSecond >= 0)) {
            throw new IllegalArgumentException("case " + caseName + " of " + stage.written() + " recognised in "
                    + recognitionMicros + " us and done in " + executionMicros + " us at " + turnsPerSecond
                    + " turns a second: none may be below zero");
        }
    }

    /** Every case that a solve met; none if it has no times. A stage that came for nothing met none. */
    public static List<CaseRun> of(PracticedSolve solve) {
        List<CaseRun> runs = new ArrayList<>();
        for (StageRecord stage : solve.record().stages()) {
            boolean isMet = !stage.caseName().isEmpty()
                    && !stage.caseName().equals(NOTHING_TO_DO)
                    && !stage.span().isEmpty()
                    && stage.span().from() > 0;
            if (isMet && stage.isTimed() && solve.record().isTimed()) {
                runs.add(of(solve, stage));
            }
        }
        return runs;
    }

    private static CaseRun of(PracticedSolve solve, StageRecord stage) {
        SolveRecord record = solve.record();
        int first = firstAfterAuf(record, stage);
        double begun = record.turns().get(first).atMicros();
        double recognition = begun - stage.startMicros();
        double execution = stage.endMicros() - begun;
        List<String> words = words(solve, first, stage.span().to());
        int turns = words.stream().mapToInt(CaseRun::halfTurnMetric).sum();
        // The first turn takes no time of the execution: so many intervals, one fewer turns.
        double perSecond = execution > 0 ? (turns - 1) * SECOND / execution : 0;
        return new CaseRun(
                stage.name(),
                stage.caseName(),
                stage.startMicros(),
                recognition,
                execution,
                perSecond,
                String.join(" ", words));
    }

    private static int halfTurnMetric(String word) {
        return "MES".indexOf(word.charAt(0)) >= 0 ? 2 : 1;
    }

    /** A pair has no AUF: turning the last layer is part of making it. */
    private static int firstAfterAuf(SolveRecord record, StageRecord stage) {
        int from = stage.span().from();
        if (stage.name() != StageName.ORIENT && stage.name() != StageName.PERMUTE) {
            return from;
        }
        Turn first = record.turns().get(from).core();
        boolean isLastLayer =
                record.crossFace().map(face -> face.opposite() == first.face()).orElse(false);
        int turn = from;
        while (isLastLayer
                && turn < stage.span().to() - 1
                && turn - from < LONGEST_AUF
                && record.turns().get(turn).core().face() == first.face()) {
            turn++;
        }
        return turn;
    }

    /** A half turn heard as two quarters is one word; a wide turn or slice stands as the hand made it. */
    private static List<String> words(PracticedSolve solve, int from, int to) {
        List<String> words = new ArrayList<>();
        HandFacts hand = solve.hand();
        for (int turn = from; turn < to; turn++) {
            Turn core = solve.record().turns().get(turn).core();
            boolean isDoubled = turn + 1 < to
                    && core.quarters() != 2
                    && core.equals(solve.record().turns().get(turn + 1).core());
            boolean isSliced = hand.isRead() && hand.turns().get(turn).move() instanceof Move.SliceTurn;
            if (hand.isRead()) {
                Move move = hand.turns().get(turn).move();
                words.add(isDoubled && !isSliced ? move.letter() + "2" : move.written());
            } else {
                words.add(isDoubled ? core.face() + "2" : core.toString());
            }
            turn += isDoubled || isSliced ? 1 : 0;
        }
        return words;
    }
}
