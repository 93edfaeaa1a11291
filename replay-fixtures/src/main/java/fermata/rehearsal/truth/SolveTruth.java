package fermata.rehearsal.truth;

import fermata.decoder.cube.Span;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;

/**
 * What really happened in a solve.
 *
 * @param solved whether it ended solved; if not, it was abandoned
 * @param hold the hold at the first turn, as two letters: the centre that is up and the one in front
 * @param turns its turns
 * @param moves every move of the hand, rotations and slips included
 * @param stages in order; an abandoned solve lacks the later ones
 * @param rhythm intervals, rests, regrips
 */
public record SolveTruth(
        boolean solved, String hold, Span turns, List<MoveTruth> moves, List<StageTruth> stages, RhythmTruth rhythm) {
    public SolveTruth {
        Orientation.ofLetters(hold);
        Objects.requireNonNull(turns, "turns");
        moves = List.copyOf(moves);
        stages = List.copyOf(stages);
        Objects.requireNonNull(rhythm, "rhythm");
    }

    /** The moves as one sequence, to be walked from {@link #hold()}. */
    public Sequence sequence() {
        return Sequence.parse(moves.stream().map(MoveTruth::move).collect(Collectors.joining(" ")));
    }

    /** The rotations among the moves. */
    public List<MoveTruth> rotations() {
        return moves.stream().filter(MoveTruth::isRotation).toList();
    }
}
