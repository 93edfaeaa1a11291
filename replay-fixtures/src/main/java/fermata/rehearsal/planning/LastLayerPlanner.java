package fermata.rehearsal.planning;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Move;
import fermata.rehearsal.character.CuberHabits;
import fermata.rehearsal.character.LastLayerSequences;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/**
 * The last layer from known sequences, each after the turn of U that brings its case into position. In one look a
 * side, or in two: edges then corners to orient, corners then edges to permute.
 */
public final class LastLayerPlanner {
    /** Turns of U before a sequence, least work first. */
    private static final int[] TURNS_BEFORE = {0, 1, 3, 2};

    private final CaseSequences cases;
    private final boolean twoLooks;
    private final UnaryOperator<CubeState> shown;

    /** Cases are named by what {@code shown} makes of a state: for a right hand, its mirror image. */
    public LastLayerPlanner(CuberHabits habits, UnaryOperator<CubeState> shown) {
        this.cases = new CaseSequences(habits.handling().ownCases());
        this.twoLooks = habits.twoLooks();
        this.shown = shown;
    }

    /** From a state seen from its hold, all but the last layer solved. The hold is the same after each stage. */
    public List<PlannedStage> plan(CubeState seen) {
        List<List<Move>> orienting = new ArrayList<>();
        String orientation = caseOf(shown.apply(seen), cases::orientation);
        CubeState state = seen;
        while (CaseSequences.pattern(state) != 0) {
            boolean edgesFirst = twoLooks && CaseSequences.pattern(state) % 16 != 0;
            state = look(state, edgesFirst ? cases::firstOrientation : cases::orientation, orienting);
        }
        List<List<Move>> permuting = new ArrayList<>();
        String permutation =
                CaseSequences.finish(state).isPresent() ? "" : caseOf(shown.apply(state), cases::permutation);
        while (CaseSequences.finish(state).isEmpty()) {
            boolean cornersFirst = twoLooks && !CaseSequences.hasCornersInOrder(state);
            state = look(state, cornersFirst ? cases::firstPermutation : cases::permutation, permuting);
        }
        int quarters = CaseSequences.finish(state).orElseThrow();
        return List.of(
                new PlannedStage("orient", orientation, orienting),
                new PlannedStage("permute", permutation, permuting),
                new PlannedStage("auf", "", quarters == 0 ? List.of() : List.of(turnOfU(quarters))));
    }

    private static CubeState look(
            CubeState state, Function<CubeState, Optional<LastLayerSequences.Known>> choice, List<List<Move>> looks) {
        for (int quarters : TURNS_BEFORE) {
            CubeState turned = state.then(CaseSequences.turned(quarters));
            Optional<LastLayerSequences.Known> known = choice.apply(turned);
            if (known.isPresent()) {
                List<Move> moves = new ArrayList<>(turnOfU(quarters));
                moves.addAll(known.get().sequence().moves());
                looks.add(moves);
                return turned.then(known.get().sequence().state());
            }
        }
        throw new IllegalStateException("no known sequence for the last layer of " + state);
    }

    private static String caseOf(CubeState state, Function<CubeState, Optional<LastLayerSequences.Known>> choice) {
        for (int quarters : TURNS_BEFORE) {
            Optional<LastLayerSequences.Known> known = choice.apply(state.then(CaseSequences.turned(quarters)));
            if (known.isPresent()) {
                return known.get().name();
            }
        }
        return "";
    }

    private static List<Move> turnOfU(int quarters) {
        return quarters == 0 ? List.of() : List.of(new Move.Layer(Turn.of(Face.U, quarters)));
    }
}
