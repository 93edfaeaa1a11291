package fermata.rehearsal.planning;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.rehearsal.character.LastLayerSequences;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which known sequence meets a last layer as it is held. Immutable. */
public final class CaseSequences {
    private static final List<Corner> CORNERS = List.of(Corner.URF, Corner.UFL, Corner.ULB, Corner.UBR);
    private static final List<Edge> EDGES = List.of(Edge.UR, Edge.UF, Edge.UL, Edge.UB);

    /** By the twists and flips that a sequence takes away. */
    private final Map<Integer, LastLayerSequences.Known> orientations = new HashMap<>();

    /** By the flips alone: the first looks of somebody who orients in two. */
    private final Map<Integer, LastLayerSequences.Known> flips = new HashMap<>();

    private final Map<CubeState, LastLayerSequences.Known> permutations = new HashMap<>();

    /** The cases in {@code ownCases} are met by the solver's own sequences. */
    CaseSequences(Set<String> ownCases) {
        for (LastLayerSequences.Known known : LastLayerSequences.orientations(ownCases)) {
            int pattern = pattern(known.sequence().state().inverse());
            orientations.put(pattern, known);
            if (List.of("44", "45").contains(known.name())) {
                flips.put(pattern % 16, known);
            }
        }
        for (LastLayerSequences.Known known : LastLayerSequences.permutations(ownCases)) {
            CubeState met = known.sequence().state().inverse();
            for (int quarters = 0; quarters < 4; quarters++) {
                permutations.put(turned(quarters).then(met), known);
            }
        }
    }

    /** Zero if the last layer is oriented; the last four bits are the flips. */
    public static int pattern(CubeState state) {
        int pattern = 0;
        for (Corner place : CORNERS) {
            pattern = pattern * 3 + state.twistAt(place);
        }
        for (Edge place : EDGES) {
            pattern = pattern * 2 + state.flipAt(place);
        }
        return pattern;
    }

    Optional<LastLayerSequences.Known> orientation(CubeState state) {
        return Optional.ofNullable(orientations.get(pattern(state)));
    }

    /** A sequence that mends the flips of this state as held, or, when all four are wrong, two of them. */
    Optional<LastLayerSequences.Known> firstOrientation(CubeState state) {
        int flipped = pattern(state) % 16;
        return flipped == 15 ? Optional.of(named(flips, "45")) : Optional.ofNullable(flips.get(flipped));
    }

    /** The sequence after which only turns of U are left. */
    Optional<LastLayerSequences.Known> permutation(CubeState state) {
        return Optional.ofNullable(permutations.get(state));
    }

    /** A sequence that puts the corners right, up to a turn of U, for somebody who permutes in two looks. */
    Optional<LastLayerSequences.Known> firstPermutation(CubeState state) {
        return List.of("Jb", "Y").stream()
                .map(name -> named(permutations, name))
                .filter(known -> hasCornersInOrder(state.then(known.sequence().state())))
                .findFirst();
    }

    static boolean hasCornersInOrder(CubeState state) {
        int shift = state.cornerAt(Corner.URF).ordinal();
        return CORNERS.stream().allMatch(place -> state.cornerAt(place).ordinal() == (place.ordinal() + shift) % 4);
    }

    /** Solved but for a turn of the last layer: the clockwise quarters that finish it. */
    static Optional<Integer> finish(CubeState state) {
        for (int quarters = 0; quarters < 4; quarters++) {
            if (state.then(turned(quarters)).isSolved()) {
                return Optional.of(quarters);
            }
        }
        return Optional.empty();
    }

    public static CubeState turned(int quarters) {
        return quarters == 0 ? CubeState.SOLVED : CubeState.of(Turn.of(Face.U, quarters));
    }

    private static LastLayerSequences.Known named(Map<?, LastLayerSequences.Known> among, String name) {
        return among.values().stream()
                .filter(known -> known.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no sequence for case " + name));
    }
}
