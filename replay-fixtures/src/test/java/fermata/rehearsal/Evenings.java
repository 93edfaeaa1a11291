package fermata.rehearsal;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Span;
import fermata.decoder.cube.Turn;
import fermata.rehearsal.character.CuberStyle;
import fermata.rehearsal.truth.AttemptTruth;
import fermata.rehearsal.truth.Evening;
import fermata.rehearsal.truth.SolveTruth;
import fermata.rehearsal.truth.TimedTurn;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** Evenings for the tests, and ways to look into them. */
public final class Evenings {
    /** How many solves a usual evening has. */
    public static final int SOLVES = 100;

    private static final Map<String, Evening> USUAL = new HashMap<>();

    private Evenings() {}

    /** A long evening with everything in it, made once for all tests. */
    public static Evening usual(CuberStyle style) {
        return USUAL.computeIfAbsent(style.name(), name -> of(style, 41, EveningPlan.ofSolves(SOLVES)));
    }

    public static Evening of(CuberStyle style, long seed, EveningPlan plan) {
        return new VirtualCuber(style, new SplittableRandom(seed)).evening(plan);
    }

    /** The state before each turn, and after the last one. */
    public static List<CubeState> states(Evening evening) {
        List<CubeState> states = new ArrayList<>();
        CubeState state = CubeState.SOLVED;
        states.add(state);
        for (TimedTurn turn : evening.turns()) {
            state = state.apply(turn.turn());
            states.add(state);
        }
        return states;
    }

    public static List<Turn> turns(Evening evening, Span span) {
        return evening.turns().subList(span.from(), span.to()).stream()
                .map(TimedTurn::turn)
                .toList();
    }

    public static List<SolveTruth> solved(Evening evening) {
        return evening.attempts().stream()
                .map(AttemptTruth::solve)
                .filter(SolveTruth::solved)
                .toList();
    }

    /** From the first turn to the last one. */
    public static double seconds(Evening evening, SolveTruth solve) {
        long first = evening.turns().get(solve.turns().from()).atMicros();
        long last = evening.turns().get(solve.turns().to() - 1).atMicros();
        return (last - first) / 1e6;
    }

    /** Moves that turn something, slips left out. */
    public static long turnCount(SolveTruth solve) {
        return solve.moves().stream()
                .filter(move -> !move.slip() && !move.isRotation())
                .count();
    }
}
