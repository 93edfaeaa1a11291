package fermata.analysis.calibration;

import fermata.decoder.cube.Turn;
import fermata.decoder.notation.CoreStep;
import fermata.decoder.notation.Move;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A short sequence of the drill.
 *
 * @param name what it is about
 * @param words for the hand, in its notation
 * @param kinds for each turn from the second, what lies between it and the one before
 */
public record Exercise(String name, String words, List<TransitionKind> kinds) {
    public Exercise {
        kinds = List.copyOf(kinds);
        int turns = Sequence.parse(words).walk(Orientation.IDENTITY).turns().size();
        if (kinds.size() != turns - 1) {
            throw new IllegalArgumentException(
                    "exercise " + name + " has " + turns + " turns and " + kinds.size() + " transitions");
        }
    }

    /** An exercise for the left hand; {@code regrips} are the turns, from 0, before which the wrist is set back. */
    static Exercise left(String name, String words, Set<Integer> regrips) {
        Sequence sequence = Sequence.parse(words);
        List<CoreStep> steps = sequence.walk(Orientation.IDENTITY).steps();
        List<TransitionKind> kinds = new ArrayList<>();
        for (int turn = 1; turn < steps.size(); turn++) {
            if (steps.get(turn).move() > steps.get(turn - 1).move() + 1) {
                kinds.add(TransitionKind.ROTATION);
            } else if (regrips.contains(turn)) {
                kinds.add(TransitionKind.REGRIP);
            } else {
                boolean wide = sequence.moves().get(steps.get(turn).move()) instanceof Move.Wide;
                kinds.add(wide ? TransitionKind.WIDE : TransitionKind.FLUENT);
            }
        }
        return new Exercise(name, words, kinds);
    }

    /** The same for the other hand: what a mirror shows. */
    Exercise mirrored() {
        String mirrored = Sequence.parse(words).moves().stream()
                .map(Move::mirrored)
                .map(Move::written)
                .collect(Collectors.joining(" "));
        return new Exercise(name, mirrored, kinds);
    }

    /** The turns that the centres feel when it is begun in a hold. */
    public List<Turn> turns(Orientation hold) {
        return Sequence.parse(words).walk(hold).turns();
    }
}
