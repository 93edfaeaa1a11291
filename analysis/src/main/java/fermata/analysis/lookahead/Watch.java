package fermata.analysis.lookahead;

import fermata.analysis.beat.HandFacts;
import fermata.analysis.beat.PracticedSolve;
import fermata.analysis.event.Hand;
import fermata.analysis.record.SolveRecord;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Span;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What a solver could know at each moment of one stage, watching the cube from the stage's beginning. The last moment,
 * when the last turn is done, is left out: then the next pair is needed already.
 */
final class Watch {
    /** The lead of what was never identified in time. */
    static final long NEVER = -1;

    private final SolveRecord record;
    private final HandFacts facts;
    private final Span stage;
    private final Map<View, List<PieceKnowledge>> knowledge = new EnumMap<>(View.class);

    Watch(PracticedSolve solve, Span stage) {
        this.record = solve.record();
        this.facts = solve.hand();
        this.stage = stage;
    }

    /** How long before the stage's last turn all of the wanted pieces were identified, or {@link #NEVER}. */
    long leadMicros(Wanted wanted, View view) {
        List<PieceKnowledge> moments = knowledge.computeIfAbsent(view, this::watch);
        for (int moment = 0; moment < moments.size(); moment++) {
            if (wanted.isIdentifiedBy(moments.get(moment))) {
                return leadMicros(moment);
            }
        }
        return NEVER;
    }

    private long leadMicros(int moment) {
        int turnsDone = stage.from() + moment;
        long seenAt = turnsDone == 0 ? 0 : record.turns().get(turnsDone - 1).atMicros();
        return record.turns().get(stage.to() - 1).atMicros() - seenAt;
    }

    /** Whether, when they were first identified, one of the wanted pieces was told by where it could not be. */
    boolean isByElimination(Wanted wanted) {
        return knowledge.computeIfAbsent(View.PLAIN, this::watch).stream()
                .filter(wanted::isIdentifiedBy)
                .findFirst()
                .map(wanted::isByEliminationIn)
                .orElse(false);
    }

    /** The wanted pieces that were still open at the last moment that would have been early enough. */
    Wanted hidden(Wanted wanted, long margin) {
        List<PieceKnowledge> moments = knowledge.computeIfAbsent(View.PLAIN, this::watch);
        PieceKnowledge last = PieceKnowledge.nothing();
        for (int moment = 0; moment < moments.size() && leadMicros(moment) >= margin; moment++) {
            last = moments.get(moment);
        }
        return wanted.openIn(last);
    }

    /** The mean over the stage's turns. */
    double holdProbability() {
        return facts.turns().subList(stage.from(), stage.to()).stream()
                .mapToDouble(HandFacts.AtTurn::holdProbability)
                .average()
                .orElse(0);
    }

    private List<PieceKnowledge> watch(View view) {
        CubeState state = record.attempt().scramble().start();
        for (int turn = 0; turn < stage.from(); turn++) {
            state = state.apply(record.turns().get(turn).core());
        }
        Hand hand = facts.hand();
        List<PieceKnowledge> moments = new ArrayList<>();
        PieceKnowledge known = PieceKnowledge.nothing();
        for (int turn = stage.from(); turn < stage.to(); turn++) {
            Orientation hold = facts.turns().get(turn).hold();
            known = known.seeing(state, hold, hand, view);
            moments.add(known);
            known = known.after(record.turns().get(turn).core());
            state = state.apply(record.turns().get(turn).core());
        }
        return moments;
    }
}
