package fermata.analysis.method;

import fermata.analysis.goal.HeldState;
import fermata.analysis.goal.PiecesHome;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.search.Slot;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * All states of a solve, seen as if the cube had been held in one orientation throughout. Time t is after t turns.
 *
 * <p>Something also <em>holds at</em> time t if the turn that led there was a half turn and it held halfway through: a
 * solver who runs the last quarter of one stage into the first of the next makes one half turn of both. Halfway may lie
 * on either side, since a half turn does not say which way it went.
 *
 * <p>Cost: one look at a time for a search.
 */
final class HeldStates {
    private final SolveStates solve;
    private final Orientation hold;
    private final HeldState[][] states;

    HeldStates(SolveStates solve, Orientation hold) {
        this.solve = solve;
        this.hold = hold;
        this.states = new HeldState[solve.end() + 1][];
        for (int time = 0; time < states.length; time++) {
            states[time] = solve.at(time).stream()
                    .map(state -> new HeldState(state, hold))
                    .toArray(HeldState[]::new);
        }
    }

    /** Which centre is where the names say D, F and so on. */
    Orientation hold() {
        return hold;
    }

    /** Which pieces are home at each time, in the core frame. */
    PiecesHome home() {
        return solve.home();
    }

    /** The core corners that are seen at the slots, in the slots' order. */
    List<Corner> corners() {
        return Stream.of(Slot.values()).map(this::corner).toList();
    }

    private Corner corner(Slot slot) {
        List<Face> faces = slot.corner().faces().stream().map(hold::coreAt).toList();
        return Stream.of(Corner.values())
                .filter(corner -> corner.faces().containsAll(faces))
                .findFirst()
                .orElseThrow();
    }

    /** The turn that led to a time, as named in the hold. */
    Turn turnTo(int time) {
        return hold.toHand(solve.turnTo(time));
    }

    /** The time after the last turn. */
    int end() {
        return solve.end();
    }

    /** The state after so many turns and, if the last of them was a half turn, the two it may have passed through. */
    List<HeldState> statesAt(int time) {
        return List.of(states[time]);
    }

    /** Whether it holds after so many turns, or halfway through a half turn that is the last of them. */
    boolean holdsAt(int time, Predicate<HeldState> property) {
        for (HeldState state : states[time]) {
            if (property.test(state)) {
                return true;
            }
        }
        return false;
    }

    /** The first time in {@code from..latest} at which it holds; {@code latest} if it never does before. */
    int first(int from, int latest, Predicate<HeldState> property) {
        for (int time = from; time < latest; time++) {
            if (holdsAt(time, property)) {
                return time;
            }
        }
        return latest;
    }
}
