package fermata.decoder.finding;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.finding.StatePairs.Pair;
import fermata.decoder.stream.profile.StateEncoding.Run;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.ToIntBiFunction;

/**
 * Finds a state that is sent piece by piece, for the corners or the edges. In the frame of the solved cube the pieces
 * are numbered as the places are listed; which place is which, the turns tell that touch it; and by which face a place
 * is named first, how the pieces twist from place to place.
 */
final class PieceSearch {
    private static final double MOST_WRONG = 0.2;

    /**
     * What was found.
     *
     * @param names of the places in the order sent
     * @param places run of which piece is where
     * @param twists run of how it is turned
     */
    record Found(List<String> names, Run places, Run twists) {}

    private final StatePairs pairs;
    private final int frameBytes;
    private final List<String> standard;
    private final BiFunction<CubeState, Integer, Integer> pieceAt;
    private final ToIntBiFunction<CubeState, Integer> twistAt;
    private final int count;
    private final int twistsOfPiece;

    /**
     * For one kind of piece.
     *
     * @param standard names of the places, three letters each or two
     * @param pieceAt number of the piece in a place of a state
     * @param twistAt how it is turned there
     */
    PieceSearch(
            StatePairs pairs,
            int frameBytes,
            List<String> standard,
            BiFunction<CubeState, Integer, Integer> pieceAt,
            ToIntBiFunction<CubeState, Integer> twistAt) {
        this.pairs = pairs;
        this.frameBytes = frameBytes;
        this.standard = standard;
        this.pieceAt = pieceAt;
        this.twistAt = twistAt;
        this.count = standard.size();
        this.twistsOfPiece = standard.get(0).length();
    }

    Optional<Found> find() {
        int narrowest = 32 - Integer.numberOfLeadingZeros(count - 1);
        for (Run places : RunWalk.runs(count, narrowest, frameBytes, this::isNumbered)) {
            Optional<int[]> order = order(places);
            if (order.isPresent()) {
                int narrowestTwist = twistsOfPiece - 1;
                for (Run twists : RunWalk.runs(count, narrowestTwist, frameBytes, run -> isTwist(run, places))) {
                    Optional<int[]> first = firstFaces(order.get(), places, twists);
                    if (first.isPresent()) {
                        return Optional.of(new Found(names(order.get(), first.get()), places, twists));
                    }
                }
            }
        }
        return Optional.empty();
    }

    private boolean isNumbered(Run run) {
        for (int i = 0; i < count; i++) {
            if (run.at(i).read(pairs.solved().bytes()) != i) {
                return false;
            }
        }
        return true;
    }

    /** Which standard place each field of a run is, if the turns that change it are those of one place's faces. */
    private Optional<int[]> order(Run run) {
        int[] order = new int[count];
        Set<Integer> met = new HashSet<>();
        for (int i = 0; i < count; i++) {
            Set<Face> touching = touching(run, i);
            int place = 0;
            while (place < count && !faces(standard.get(place)).equals(touching)) {
                place++;
            }
            if (place == count || !met.add(place)) {
                return Optional.empty();
            }
            order[i] = place;
        }
        return Optional.of(order);
    }

    private Set<Face> touching(Run run, int index) {
        int[] changed = new int[6];
        int[] turned = new int[6];
        for (Pair pair : pairs.pairs()) {
            int face = pair.asked().face().ordinal();
            turned[face]++;
            changed[face] += value(run, index, pair.before()) != value(run, index, pair.after()) ? 1 : 0;
        }
        Set<Face> touching = EnumSet.noneOf(Face.class);
        for (Face face : Face.values()) {
            if (2 * changed[face.ordinal()] > turned[face.ordinal()]) {
                touching.add(face);
            }
        }
        return touching;
    }

    private static Set<Face> faces(String place) {
        Set<Face> faces = EnumSet.noneOf(Face.class);
        place.chars().forEach(letter -> faces.add(Face.of((char) letter)));
        return faces;
    }

    private static int value(Run run, int index, Heard frame) {
        return (int) run.at(index).read(frame.bytes());
    }

    private boolean isTwist(Run run, Run places) {
        for (int i = 0; i < count; i++) {
            boolean overlaps = BitPlace.covered(run.at(i)).intersects(BitPlace.covered(places.at(i)));
            if (overlaps || value(run, i, pairs.solved()) != 0) {
                return false;
            }
        }
        boolean moves = false;
        for (Pair pair : pairs.pairs()) {
            for (int i = 0; i < count; i++) {
                int value = value(run, i, pair.after());
                moves |= value > 0;
                if (value >= twistsOfPiece) {
                    return false;
                }
            }
        }
        return moves;
    }

    /** For each place of the run, which of its standard faces comes first; empty if the twists do not fit. */
    private Optional<int[]> firstFaces(int[] order, Run places, Run twists) {
        int[] indexOf = new int[count];
        for (int i = 0; i < count; i++) {
            indexOf[order[i]] = i;
        }
        int[] first = new int[count];
        Arrays.fill(first, -1);
        first[0] = 0;
        List<Pair> asAsked = pairs.pairs().stream()
                .filter(pair -> isAsAsked(pair, order, indexOf, places))
                .toList();
        for (int round = 0; round < count; round++) {
            for (Pair pair : asAsked) {
                spread(pair, order, indexOf, twists, first);
            }
        }
        int wrong = 0;
        for (Pair pair : asAsked) {
            wrong += agrees(pair, order, indexOf, twists, first) ? 0 : 1;
        }
        boolean isKnown = Arrays.stream(first).allMatch(f -> f >= 0);
        return isKnown && wrong <= MOST_WRONG * asAsked.size() ? Optional.of(first) : Optional.empty();
    }

    /** Whether the pieces went where the turn asked for takes them: a slip took them elsewhere. */
    private boolean isAsAsked(Pair pair, int[] order, int[] indexOf, Run places) {
        for (int to = 0; to < count; to++) {
            int from = from(pair.asked(), order[to], indexOf);
            if (value(places, to, pair.after()) != value(places, from, pair.before())) {
                return false;
            }
        }
        return true;
    }

    /** From each place whose first face is known, to where the turn takes its piece. */
    private void spread(Pair pair, int[] order, int[] indexOf, Run twists, int[] first) {
        for (int to = 0; to < count; to++) {
            int from = from(pair.asked(), order[to], indexOf);
            if (from != to && first[from] >= 0 && first[to] < 0) {
                first[to] = expected(pair, from, to, order, twists, first);
            }
        }
    }

    private boolean agrees(Pair pair, int[] order, int[] indexOf, Run twists, int[] first) {
        for (int to = 0; to < count; to++) {
            int from = from(pair.asked(), order[to], indexOf);
            if (first[from] >= 0 && expected(pair, from, to, order, twists, first) != first[to]) {
                return false;
            }
        }
        return true;
    }

    private int from(Turn turn, int place, int[] indexOf) {
        return indexOf[pieceAt.apply(CubeState.of(turn), place)];
    }

    /** A piece whose twist is told by first faces turns by what the turn adds, less the change of first face. */
    private int expected(Pair pair, int from, int to, int[] order, Run twists, int[] first) {
        int added = twistAt.applyAsInt(CubeState.of(pair.asked()), order[to]);
        int told = value(twists, to, pair.after()) - value(twists, from, pair.before());
        return Math.floorMod(first[from] + added - told, twistsOfPiece);
    }

    private List<String> names(int[] order, int[] first) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            String name = standard.get(order[i]);
            names.add(name.substring(first[i]) + name.substring(0, first[i]));
        }
        return names;
    }
}
