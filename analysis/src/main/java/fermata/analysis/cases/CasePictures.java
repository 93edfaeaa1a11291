package fermata.analysis.cases;

import fermata.analysis.goal.HeldState;
import fermata.analysis.goal.Pieces;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;
import fermata.decoder.notation.Sequence;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.search.Slot;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.function.Predicate;

/**
 * What a case looks like: 54 letters as in a facelet string, the last layer at U, with {@code .} where the colour does
 * not matter.
 *
 * <p>A picture is turned about U so that the given sequence solves what it shows, if some such picture exists: then it
 * is what the hand saw when it began. Else, as for an empty sequence, the cube is turned as the case's name has it.
 * Pure. Cost: up to 16 runs of the sequence.
 */
public final class CasePictures {
    private static final int SIDES = 4;

    private CasePictures() {}

    /**
     * Where the last layer's colour is; nothing else is shown.
     *
     * @param caseName {@code "1"} to {@code "57"}
     * @param sequence in the hand's notation; may be empty
     * @throws IllegalArgumentException if there is no such case
     */
    public static String ofOrientation(String caseName, String sequence) {
        String pattern = pattern(LastLayerCases.orientations(), caseName);
        int[] twists = new int[8];
        int[] flips = new int[12];
        for (int place = 0; place < SIDES; place++) {
            twists[Pieces.TOP_CORNERS.get(place).ordinal()] = pattern.charAt(2 * place) - '0';
            flips[Pieces.TOP_EDGES.get(place).ordinal()] = pattern.charAt(2 * place + 1) - '0';
        }
        CubeState met = CubeState.ofCubies(inOrder(8), twists, inOrder(12), flips);
        CubeState seen = turned(met, Sequence.parse(sequence), Pieces::topOriented);
        return shown(seen, topStickers()::contains).replaceAll("[^U]", ".");
    }

    /**
     * The last layer's pieces, named so that as many as possible of them are home.
     *
     * @param caseName {@code "Aa"} to {@code "Z"}
     * @param sequence as above
     * @throws IllegalArgumentException if there is no such case
     */
    public static String ofPermutation(String caseName, String sequence) {
        String pattern = pattern(LastLayerCases.permutations(), caseName);
        int[] corners = inOrder(8);
        int[] edges = inOrder(12);
        for (int place = 0; place < SIDES; place++) {
            corners[Pieces.TOP_CORNERS.get(place).ordinal()] =
                    Pieces.TOP_CORNERS.get(pattern.charAt(2 * place) - '0').ordinal();
            edges[Pieces.TOP_EDGES.get(place).ordinal()] =
                    Pieces.TOP_EDGES.get(pattern.charAt(2 * place + 1) - '0').ordinal();
        }
        CubeState met = CubeState.ofCubies(corners, new int[8], edges, new int[12]);
        CubeState seen = turned(met, Sequence.parse(sequence), Pieces::solvedUpToTop);
        return shown(mostAtHome(seen), topStickers()::contains);
    }

    /**
     * The two pieces of a pair, the centres and the cross. The pair's place is the one between the centres of its
     * colours: at FR unless the sequence solves it elsewhere.
     *
     * @param caseName {@code corner-edge} as {@link PairCases} names it, such as {@code "URF-UB"}
     * @param sequence as above
     * @throws IllegalArgumentException if there is no such case
     */
    public static String ofPair(String caseName, String sequence) {
        CubeState met = pairState(caseName);
        Sequence done = Sequence.parse(sequence);
        Orientation hold = Orientation.IDENTITY;
        for (int sides = 0; sides < SIDES; sides++) {
            Slot slot = slotSeen(hold);
            CubeState held = HeldState.renamed(met, hold);
            for (int quarters = 0; quarters < SIDES; quarters++) {
                if (solves(done, held, state -> state.has(Pieces.of(slot)) && Pieces.cross(state))) {
                    return shown(held, pairStickers(held, slot)::contains);
                }
                held = held.apply(Turn.of(Face.U, 1));
            }
            hold = hold.then(Orientation.turning(Face.U, 1));
        }
        return shown(met, pairStickers(met, Slot.FR)::contains);
    }

    private static String pattern(Map<String, String> names, String caseName) {
        return names.entrySet().stream()
                .filter(entry -> entry.getValue().equals(caseName))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("there is no last-layer case " + caseName));
    }

    /** A turn of U before the sequence by which it solves the state; the state as it is if there is none. */
    private static CubeState turned(CubeState met, Sequence done, Predicate<HeldState> isSolved) {
        CubeState seen = met;
        for (int quarters = 0; quarters < SIDES; quarters++) {
            if (solves(done, seen, isSolved)) {
                return seen;
            }
            seen = seen.apply(Turn.of(Face.U, 1));
        }
        return met;
    }

    private static boolean solves(Sequence done, CubeState seen, Predicate<HeldState> isSolved) {
        return isSolved.test(
                HeldState.of(seen.apply(done.walk(Orientation.IDENTITY).turns())));
    }

    /** The same order of pieces under the names by which most are home; the cube is turned, not the layer. */
    private static CubeState mostAtHome(CubeState seen) {
        CubeState best = seen;
        CubeState named = seen;
        for (int quarters = 1; quarters < SIDES; quarters++) {
            named = CubeState.of(Turn.of(Face.U, 1)).then(named);
            best = atHome(named) > atHome(best) ? named : best;
        }
        return best;
    }

    private static long atHome(CubeState state) {
        return Pieces.TOP_CORNERS.stream().filter(state::isSolved).count()
                + Pieces.TOP_EDGES.stream().filter(state::isSolved).count();
    }

    /** The pair of FR put where the name says, by exchange with what was there. */
    private static CubeState pairState(String caseName) {
        for (int corner = 0; corner < 24; corner++) {
            for (int edge = 0; edge < 24; edge++) {
                Corner place = Corner.values()[corner / 3];
                Edge other = Edge.values()[edge / 2];
                CubeState state = exchanged(place, corner % 3, other, edge % 2);
                if (!other.touches(Face.D) && PairCases.of(state, Slot.FR).equals(caseName)) {
                    return state;
                }
            }
        }
        throw new IllegalArgumentException("there is no pair case " + caseName);
    }

    private static CubeState exchanged(Corner place, int twist, Edge other, int flip) {
        int[] corners = inOrder(8);
        int[] twists = new int[8];
        int[] edges = inOrder(12);
        int[] flips = new int[12];
        corners[Corner.DFR.ordinal()] = place.ordinal();
        corners[place.ordinal()] = Corner.DFR.ordinal();
        twists[place.ordinal()] = twist;
        edges[Edge.FR.ordinal()] = other.ordinal();
        edges[other.ordinal()] = Edge.FR.ordinal();
        flips[other.ordinal()] = flip;
        return CubeState.ofCubies(corners, twists, edges, flips);
    }

    private static Slot slotSeen(Orientation hold) {
        List<Face> sides = List.of(hold.handAt(Face.F), hold.handAt(Face.R));
        for (Slot slot : Slot.values()) {
            if (slot.faces().containsAll(sides)) {
                return slot;
            }
        }
        throw new IllegalStateException("a turn about U brought F and R to " + sides);
    }

    private static Set<Integer> topStickers() {
        Set<Integer> stickers = new HashSet<>();
        Pieces.TOP_CORNERS.forEach(corner -> addStickers(stickers, corner));
        Pieces.TOP_EDGES.forEach(edge -> addStickers(stickers, edge));
        stickers.add(centre(Face.U));
        return stickers;
    }

    private static Set<Integer> pairStickers(CubeState state, Slot slot) {
        Set<Integer> stickers = new HashSet<>();
        addStickers(stickers, state.placeOf(slot.corner()));
        addStickers(stickers, state.placeOf(slot.edge()));
        Pieces.CROSS.forEach(edge -> addStickers(stickers, edge));
        for (Face face : Face.values()) {
            stickers.add(centre(face));
        }
        return stickers;
    }

    private static void addStickers(Set<Integer> stickers, Corner place) {
        for (int which = 0; which < 3; which++) {
            stickers.add(place.sticker(which));
        }
    }

    private static void addStickers(Set<Integer> stickers, Edge place) {
        for (int which = 0; which < 2; which++) {
            stickers.add(place.sticker(which));
        }
    }

    private static int centre(Face face) {
        return 9 * face.ordinal() + 4;
    }

    private static String shown(CubeState state, IntPredicate isShown) {
        String letters = state.facelets();
        StringBuilder seen = new StringBuilder(letters.length());
        for (int number = 0; number < letters.length(); number++) {
            seen.append(isShown.test(number) ? letters.charAt(number) : '.');
        }
        return seen.toString();
    }

    private static int[] inOrder(int count) {
        int[] numbers = new int[count];
        for (int number = 0; number < count; number++) {
            numbers[number] = number;
        }
        return numbers;
    }
}
