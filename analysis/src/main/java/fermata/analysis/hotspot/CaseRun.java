package fermata.analysis.hotspot;

import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.analysis.rest.HandFacts;
import fermata.analysis.rest.PracticedSolve;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import java.util.ArrayList;
import java.util.List;

/** One solve's way through one last-layer case. An AUF before the sequence belongs to recognising. */
record CaseRun(
        String caseName, double recognitionMicros, double executionMicros, double turnsPerSecond, String sequence) {
    private static final double SECOND = 1e6;
    private static final int LONGEST_AUF = 2;

    static CaseRun of(PracticedSolve solve, StageRecord stage) {
        SolveRecord record = solve.record();
        int first = firstAfterAuf(record, stage);
        double begun = record.turns().get(first).atMicros();
        double recognition = begun - stage.startMicros();
        double execution = stage.endMicros() - begun;
        List<String> words = words(solve, first, stage.span().to());
        // The first turn takes no time of the execution: so many intervals, one fewer turns.
        double perSecond = execution > 0 ? (words.size() - 1) * SECOND / execution : 0;
        return new CaseRun(stage.caseName(), recognition, execution, perSecond, String.join(" ", words));
    }

    private static int firstAfterAuf(SolveRecord record, StageRecord stage) {
        int from = stage.span().from();
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
