package fermata.analysis;

import fermata.analysis.event.CaptureLog;
import fermata.analysis.event.Event;
import fermata.analysis.method.MethodReader;
import fermata.analysis.method.MethodReading;
import fermata.analysis.method.StageMark;
import fermata.analysis.record.Method;
import fermata.analysis.record.Segment;
import fermata.analysis.record.SolveRecord;
import fermata.analysis.record.StageRecord;
import fermata.analysis.record.TurnRecord;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.List;

/** Reads the attempts of a capture, each with its method and stages. */
final class SolveReader {
    private final List<Event.Turned> captureTurns;

    SolveReader(CaptureLog log) {
        this.captureTurns = log.turns();
    }

    /** The attempt's turns, numbered and timed from its first. */
    List<TurnRecord> turns(Segment.Attempt attempt) {
        Span solve = attempt.solve();
        Event.Turned first = captureTurns.get(solve.from());
        List<TurnRecord> turns = new ArrayList<>(solve.length());
        for (int raw = solve.from(); raw < solve.to(); raw++) {
            Event.Turned turned = captureTurns.get(raw);
            long at = turned.isTimed() ? turned.atMicros() - first.atMicros() : Event.NO_TIME;
            turns.add(new TurnRecord(raw - solve.from(), at, turned.turn(), turned.source()));
        }
        return turns;
    }

    SolveRecord read(Segment.Attempt attempt) {
        List<TurnRecord> turns = turns(attempt);
        MethodReading method = method(attempt, turns);
        return new SolveRecord(
                attempt,
                captureTurns.get(attempt.solve().from()).atMicros(),
                timeMicros(attempt, turns),
                pauseMicros(attempt),
                method.method(),
                method.crossFaces(),
                turns,
                method.stages().stream().map(mark -> timed(mark, turns)).toList());
    }

    /** No method can be told of turns that do not add up: unsolved, or with some lost. */
    private static MethodReading method(Segment.Attempt attempt, List<TurnRecord> turns) {
        List<Turn> core = turns.stream().map(TurnRecord::core).toList();
        return attempt.scramble().start().apply(core).isSolved()
                ? MethodReader.read(attempt.scramble().start(), core)
                : new MethodReading(Method.UNTOLD, List.of(), List.of());
    }

    /** First to last turn; unknown if turns were lost at either end. */
    private static long timeMicros(Segment.Attempt attempt, List<TurnRecord> turns) {
        boolean endsLost =
                attempt.gaps().stream().anyMatch(gap -> gap.beforeTurn() == 0 || gap.beforeTurn() == turns.size());
        return endsLost ? Event.NO_TIME : turns.get(turns.size() - 1).atMicros();
    }

    private long pauseMicros(Segment.Attempt attempt) {
        Span scramble = attempt.scramble().span();
        Event.Turned first = captureTurns.get(attempt.solve().from());
        if (scramble.isEmpty() || !first.isTimed()) {
            return Event.NO_TIME;
        }
        return Math.max(
                0, first.atMicros() - captureTurns.get(scramble.to() - 1).atMicros());
    }

    private static StageRecord timed(StageMark mark, List<TurnRecord> turns) {
        return new StageRecord(
                mark.name(),
                mark.caseName(),
                mark.span(),
                reachedMicros(mark.span().from(), turns),
                reachedMicros(mark.span().to(), turns),
                mark.faces(),
                mark.parts().stream().map(part -> timed(part, turns)).toList());
    }

    /** When so many turns were done. Before the first nothing is: time runs from it. */
    private static long reachedMicros(int turnsDone, List<TurnRecord> turns) {
        return turns.get(Math.max(0, turnsDone - 1)).atMicros();
    }
}
