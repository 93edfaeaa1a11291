package fermata.analysis.method;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Facelets;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * All states of a solve, renamed as if the cube had been held in one orientation throughout. Time t is after t turns.
 *
 * <p>Something also <em>holds at</em> time t if the turn that led there was a half turn and it held halfway through: a
 * solver who runs the last quarter of one stage into the first of the next makes one half turn of both. Halfway may lie
 * on either side, since a half turn does not say which way it went.
 *
 * <p>Cost: n + 1 states to make, one look at a time for a search.
 */
final class HeldStates {
    private final Orientation hold;
    private final List<CubeState> states;
    private final List<Turn> turns;

    private HeldStates(Orientation hold, List<CubeState> states, List<Turn> turns) {
        this.hold = hold;
        this.states = List.copyOf(states);
        this.turns = List.copyOf(turns);
    }

    static HeldStates of(CubeState start, List<Turn> turns, Orientation hold) {
        List<CubeState> states = new ArrayList<>(turns.size() + 1);
        List<Turn> heldTurns = turns.stream().map(hold::toHand).toList();
        CubeState state = renamed(start, hold);
        states.add(state);
        for (Turn turn : heldTurns) {
            state = state.apply(turn);
            states.add(state);
        }
        return new HeldStates(hold, states, heldTurns);
    }

    /** The state as it would be called by somebody who named the faces by where they are in {@code hold}. */
    static CubeState renamed(CubeState state, Orientation hold) {
        String seen = hold.facelets(state);
        StringBuilder letters = new StringBuilder(seen.length());
        for (int place = 0; place < seen.length(); place++) {
            letters.append(hold.handAt(Face.of(seen.charAt(place))).name());
        }
        return Facelets.read(letters.toString());
    }

    /** Which centre is where the names say D, F and so on. */
    Orientation hold() {
        return hold;
    }

    CubeState at(int time) {
        return states.get(time);
    }

    /** The turn that led to a time, as named in the hold. */
    Turn turnTo(int time) {
        return turns.get(time - 1);
    }

    /** The time after the last turn. */
    int end() {
        return turns.size();
    }

    /** The state after so many turns and, if the last of them was a half turn, the two it may have passed through. */
    List<CubeState> statesAt(int time) {
        CubeState reached = states.get(time);
        if (time == 0 || turnTo(time).quarters() != 2) {
            return List.of(reached);
        }
        Turn quarter = Turn.of(turnTo(time).face(), 1);
        return List.of(reached, reached.apply(quarter), states.get(time - 1).apply(quarter));
    }

    /** Whether it holds after so many turns, or halfway through a half turn that is the last of them. */
    boolean holdsAt(int time, Predicate<CubeState> property) {
        return property.test(states.get(time)) || statesAt(time).stream().anyMatch(property);
    }

    /** The first time in {@code from..latest} at which it holds; {@code latest} if it never does before. */
    int first(int from, int latest, Predicate<CubeState> property) {
        for (int time = from; time < latest; time++) {
            if (holdsAt(time, property)) {
                return time;
            }
        }
        return latest;
    }
}
