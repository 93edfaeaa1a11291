package fermata.rehearsal;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.rehearsal.truth.TimedTurn;
import java.util.ArrayList;
import java.util.List;

/** What the sensors feel in the course of an evening, written down as it happens. */
final class Tape {
    private final List<TimedTurn> turns = new ArrayList<>();
    private CubeState state = CubeState.SOLVED;
    private long nowMicros;

    /** Time passes without a turn. */
    void pass(long micros) {
        nowMicros += micros;
    }

    void turn(Turn core) {
        turns.add(new TimedTurn(nowMicros, core));
        state = state.apply(core);
    }

    /** How many turns there are, which is also the place of the next one. */
    int size() {
        return turns.size();
    }

    CubeState state() {
        return state;
    }

    List<TimedTurn> turns() {
        return turns;
    }
}
