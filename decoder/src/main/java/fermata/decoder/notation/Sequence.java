package fermata.decoder.notation;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;

/**
 * A written sequence of moves in the hand frame.
 *
 * @param moves first to last
 */
public record Sequence(List<Move> moves) {
    public Sequence {
        moves = List.copyOf(moves);
    }

    /**
     * Reads a sequence. Accepted are face turns, wide turns ({@code Rw}, {@code 2Rw}, {@code r}), slices, rotations,
     * amounts {@code 2}, {@code '} and {@code 2'} with any of the usual apostrophes, groups {@code (R U)3},
     * conjugates {@code [A: B]} and commutators {@code [A, B]}, and comments from {@code //} to the end of the line.
     *
     * @throws NotationException naming column and token of the first thing that is none of these
     */
    public static Sequence parse(String text) {
        return new Sequence(new NotationReader(text).read());
    }

    /** A sequence of face turns. */
    public static Sequence ofTurns(List<Turn> turns) {
        return new Sequence(
                turns.stream().map(turn -> (Move) new Move.Layer(turn)).toList());
    }

    /** The sequence that takes this one back. */
    public Sequence inverse() {
        List<Move> reversed = new ArrayList<>(moves);
        Collections.reverse(reversed);
        return new Sequence(reversed.stream().map(Move::inverse).toList());
    }

    /** This sequence and then {@code next}. */
    public Sequence then(Sequence next) {
        List<Move> both = new ArrayList<>(moves);
        both.addAll(next.moves);
        return new Sequence(both);
    }

    /** What the centres feel when the sequence is begun in {@code start}. */
    public CoreWalk walk(Orientation start) {
        List<CoreStep> steps = new ArrayList<>();
        Orientation hold = start;
        for (int index = 0; index < moves.size(); index++) {
            Move move = moves.get(index);
            for (Turn turn : move.turns(hold)) {
                steps.add(new CoreStep(turn, hold, index));
            }
            hold = hold.then(move.rotation());
        }
        return new CoreWalk(steps, hold);
    }

    /** The state after the sequence, seen against the centres, when begun solved and held by the centres. */
    public CubeState state() {
        return CubeState.SOLVED.apply(walk(Orientation.IDENTITY).turns());
    }

    /** The moves in notation, separated by spaces. */
    @Override
    public String toString() {
        return moves.stream().map(Move::written).collect(Collectors.joining(" "));
    }
}
