package fermata.daemon.live;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Reads a scramble along with the cube. Where the cube is decides, not how it came there: quarter turns heard singly,
 * opposite faces in the other order and mended mistakes all count. O(1) a turn. Not thread-safe.
 */
final class ScrambleFollower {
    /** Who is further off than this does something else. */
    private static final int LONGEST_MENDING = 8;

    private final Scramble scramble;
    private final Map<CubeState, Integer> doneAt = new HashMap<>();
    private final List<Turn> wrong = new ArrayList<>();
    private int done;
    private boolean astray;

    /** From where the cube is now; empty if nobody knows. */
    ScrambleFollower(Scramble scramble, Optional<CubeState> relative) {
        this.scramble = scramble;
        CubeState state = CubeState.SOLVED;
        doneAt.put(state, 0);
        for (int turn = 0; turn < scramble.turns().size(); turn++) {
            state = state.apply(scramble.turns().get(turn));
            doneAt.put(state, turn + 1);
        }
        jumped(relative);
    }

    Scramble scramble() {
        return scramble;
    }

    /** The cube was turned and is there now. */
    void turned(Turn turn, Optional<CubeState> relative) {
        if (relative.isEmpty() || isOn(relative.get())) {
            jumped(relative);
        } else if (!astray) {
            push(turn);
            astray = wrong.size() > LONGEST_MENDING;
        }
    }

    /** The cube is there, however it came there. */
    void jumped(Optional<CubeState> relative) {
        wrong.clear();
        astray = relative.isEmpty() || !isOn(relative.get());
        if (!astray) {
            done = doneAt.get(relative.get());
        }
    }

    private boolean isOn(CubeState relative) {
        return doneAt.containsKey(relative);
    }

    /** Keeps what must be taken back as short as turns of one face, and of the face across, allow. */
    private void push(Turn turn) {
        int place = wrong.size() - 1;
        while (place >= 0
                && wrong.get(place).face() != turn.face()
                && wrong.get(place).commutesWith(turn)) {
            place--;
        }
        if (place < 0 || wrong.get(place).face() != turn.face()) {
            wrong.add(turn);
            return;
        }
        int quarters = wrong.get(place).quarters() + turn.quarters();
        if (quarters % 4 == 0) {
            wrong.remove(place);
        } else {
            wrong.set(place, Turn.of(turn.face(), quarters));
        }
    }

    boolean isDone() {
        return !astray && wrong.isEmpty() && done == scramble.turns().size();
    }

    boolean isAtStart() {
        return !astray && wrong.isEmpty() && done == 0;
    }

    ScramblePlace place() {
        if (astray) {
            return new ScramblePlace(0, false, List.of(), true);
        }
        if (wrong.size() == 1 && done < scramble.turns().size()) {
            Turn asked = scramble.turns().get(done);
            Turn made = wrong.get(0);
            if (made.face() == asked.face() && asked.quarters() == 2) {
                return new ScramblePlace(done, true, List.of(), false);
            }
            if (made.face() == asked.face()) {
                return new ScramblePlace(
                        done, false, List.of(Turn.of(made.face(), asked.quarters() - made.quarters())), false);
            }
        }
        List<Turn> mending = new ArrayList<>(wrong.stream().map(Turn::inverse).toList());
        Collections.reverse(mending);
        return new ScramblePlace(done, false, mending, false);
    }
}
