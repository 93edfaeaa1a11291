package fermata.analysis.hold;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.CoreStep;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Mirror;
import fermata.decoder.orientation.Orientation;
import java.util.List;

/**
 * Core-frame turns with the hold before each.
 *
 * <p>Wide turns and slices are folded into it: the turn the centres felt, then the change of hold. So a wide
 * turn and the opposite face followed by a rotation are the same track, and the rotation between two turns is
 * what leads from the one hold to the next.
 *
 * @param turns what the centres felt
 * @param holds the hold before each turn
 */
public record HoldTrack(List<Turn> turns, List<Orientation> holds) {
    public HoldTrack {
        turns = List.copyOf(turns);
        holds = List.copyOf(holds);
        if (turns.size() != holds.size()) {
            throw new IllegalArgumentException(turns.size() + " turns with " + holds.size() + " holds");
        }
    }

    /** The track of a written sequence begun in {@code start}; a slice's two turns share the hold before it. */
    public static HoldTrack of(Sequence sequence, Orientation start) {
        List<CoreStep> steps = sequence.walk(start).steps();
        return new HoldTrack(
                steps.stream().map(CoreStep::turn).toList(),
                steps.stream().map(CoreStep::hold).toList());
    }

    /** What the other hand would have done. */
    public HoldTrack mirrored() {
        return new HoldTrack(Mirror.of(turns), holds.stream().map(Mirror::of).toList());
    }

    /** The turns from the first number to before the second, seen from the hold in which they were begun. */
    public HoldTrack part(int from, int to) {
        Orientation begun = holds.get(from);
        return new HoldTrack(
                turns.subList(from, to).stream().map(begun::toHand).toList(),
                holds.subList(from, to).stream().map(begun.inverse()::then).toList());
    }

    /** The number of turns. */
    public int size() {
        return turns.size();
    }

    /** Where the solver saw the layer of a turn. For a wide turn this is the layer that stayed with the core. */
    public Face layer(int turn) {
        return holds.get(turn).handAt(turns.get(turn).face());
    }

    /** The rotation between a turn (from 1) and the one before it; the identity if none. */
    public Orientation rotationBefore(int turn) {
        return holds.get(turn - 1).to(holds.get(turn));
    }

    /**
     * The turn that fixes a turn's hold together with it: the next one on another axis or, in the last run, the
     * one before that run; the turn itself if the whole track is one run. Cost: the length of the run.
     */
    public static int partner(List<Turn> turns, int turn) {
        for (int next = turn + 1; next < turns.size(); next++) {
            if (!turns.get(next).commutesWith(turns.get(turn))) {
                return next;
            }
        }
        for (int before = turn - 1; before >= 0; before--) {
            if (!turns.get(before).commutesWith(turns.get(turn))) {
                return before;
            }
        }
        return turn;
    }
}
