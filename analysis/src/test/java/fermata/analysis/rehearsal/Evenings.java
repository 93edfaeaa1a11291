package fermata.analysis.rehearsal;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** Evenings for the tests, and ways to look into them. */
final class Evenings {
    /** How many solves a usual evening has. */
    static final int SOLVES = 100;

    private static final Map<String, Evening> USUAL = new HashMap<>();

    private Evenings() {}

    /** A long evening with everything in it, made once for all tests. */
    static Evening usual(CuberStyle style) {
        return USUAL.computeIfAbsent(style.name(), name -> of(style, 41, EveningPlan.ofSolves(SOLVES)));
    }

    static Evening of(CuberStyle style, long seed, EveningPlan plan) {
        return new VirtualCuber(style, new SplittableRandom(seed)).evening(plan);
    }

    /** The state before each turn, and after the last one. */
    static List<CubeState> states(Evening evening) {
        List<CubeState> states = new ArrayList<>();
        CubeState state = CubeState.SOLVED;
        states.add(state);
        for (TimedTurn turn : evening.turns()) {
            state = state.apply(turn.turn());
            states.add(state);
        }
        return states;
    }

    static List<Turn> turns(Evening evening, Span span) {
        return evening.turns().subList(span.from(), span.to()).stream()
                .map(TimedTurn::turn)
                .toList();
    }

    static List<SolveTruth> solved(Evening evening) {
        return evening.attempts().stream()
                .map(AttemptTruth::solve)
                .filter(SolveTruth::solved)
                .toList();
    }

    /** From the first turn to the last one. */
    static double seconds(Evening evening, SolveTruth solve) {
        long first = evening.turns().get(solve.turns().from()).atMicros();
        long last = evening.turns().get(solve.turns().to() - 1).atMicros();
        return (last - first) / 1e6;
    }

    /** Moves that turn something, slips left out. */
    static long turnCount(SolveTruth solve) {
        return solve.moves().stream()
                .filter(move -> !move.slip() && !move.isRotation())
                .count();
    }
}
