package fermata.rehearsal.planning;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.search.FourPieces;
import fermata.decoder.search.PieceTurns;
import fermata.decoder.search.Slot;
import fermata.rehearsal.character.Handling;
import fermata.rehearsal.character.LeftSide;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Finds the cheapest hand moves that bring one of some pairs home and keep the cross and the pairs that are there: an
 * iterative deepening search over prices (Korf 1985), bounded from below by exact tables for four pieces at a time.
 */
public final class PairPlanner {
    private static final int CHEAPEST_TURN = 2;
    private static final int DEAREST = 120;
    private static final int REACHING_BY_TILT = 4;
    private static final int REACHING_IN_PLACE = 5;
    /** The cube is mostly turned before a pair is begun. */
    private static final int TURNING_ROUND_AMID = 1;

    private static final int LONGEST = DEAREST / CHEAPEST_TURN;
    private static final Slot[] SLOTS = Slot.values();
    private static final FourPieces[] BESIDE = new FourPieces[4];
    private static final FourPieces[][] BOTH = new FourPieces[4][4];

    /** Where the codes of the two cross edges beside a slot stand. */
    private static final int[] ONE = new int[4];

    private static final int[] OTHER = new int[4];

    static {
        for (Slot slot : SLOTS) {
            BESIDE[slot.ordinal()] = FourPieces.build(
                    List.of(slot.corner()),
                    List.of(
                            slot.edge(),
                            slot.crossEdges().get(0),
                            slot.crossEdges().get(1)));
            ONE[slot.ordinal()] = 8 + Slot.CROSS.indexOf(slot.crossEdges().get(0));
            OTHER[slot.ordinal()] = 8 + Slot.CROSS.indexOf(slot.crossEdges().get(1));
            for (Slot later : SLOTS) {
                if (later.ordinal() > slot.ordinal()) {
                    BOTH[slot.ordinal()][later.ordinal()] = FourPieces.build(
                            List.of(slot.corner(), later.corner()), List.of(slot.edge(), later.edge()));
                }
            }
        }
    }

    private final HandMoves hand;
    /** What beginning to turn the held side costs on top: tilting there and back, or letting go. */
    private final int reaching;

    /** Codes by depth: four corners, then their four edges, then the cross. */
    private final int[][] codes = new int[LONGEST + 1][12];

    private final int[] path = new int[LONGEST];
    private int[] needed = new int[0];
    private int length;

    PairPlanner(Handling handling) {
        this.hand = HandMoves.forPairs(handling);
        this.reaching = handling.left() == LeftSide.TILTED ? REACHING_BY_TILT : REACHING_IN_PLACE;
    }

    /** The pairs that are home. */
    public static Set<Slot> home(CubeState state) {
        Set<Slot> home = EnumSet.noneOf(Slot.class);
        for (Slot slot : SLOTS) {
            if (state.isSolved(slot.corner()) && state.isSolved(slot.edge())) {
                home.add(slot);
            }
        }
        return home;
    }

    /** The cheapest moves, begun in {@code hold} with the cross below, that bring any one of {@code wanted} home. */
    List<Move> plan(CubeState state, Orientation hold, Set<Slot> wanted) {
        Set<Slot> home = home(state);
        for (Slot slot : SLOTS) {
            codes[0][slot.ordinal()] = PieceTurns.codeOf(state, slot.corner());
            codes[0][slot.ordinal() + 4] = PieceTurns.codeOf(state, slot.edge());
            codes[0][slot.ordinal() + 8] = PieceTurns.codeOf(state, Slot.CROSS.get(slot.ordinal()));
        }
        for (int budget = 0; budget <= DEAREST; budget++) {
            for (Slot target : wanted) {
                // The target first: it is furthest from home and cuts off most.
                needed = Stream.concat(Stream.of(target), home.stream())
                        .mapToInt(Slot::ordinal)
                        .toArray();
                if (search(0, hold.index(), budget)) {
                    return found();
                }
            }
        }
        throw new IllegalStateException("no way home for a pair of " + wanted + " in " + state);
    }

    private List<Move> found() {
        List<Move> moves = new ArrayList<>();
        for (int place = 0; place < length; place++) {
            moves.add(hand.move(path[place]));
        }
        return moves;
    }

    private boolean search(int done, int hold, int budget) {
        int bound = bound(codes[done], budget / CHEAPEST_TURN);
        if (bound == 0 && Orientation.ofIndex(hold).coreAt(Face.D) == Face.D) {
            length = done;
            return true;
        }
        if (bound * CHEAPEST_TURN > budget) {
            return false;
        }
        for (int move = 0; move < hand.count; move++) {
            int price = price(move, done);
            if (price > budget || isIdle(move, done)) {
                continue;
            }
            path[done] = move;
            step(codes[done], codes[done + 1], hold, move);
            if (search(done + 1, hand.next(hold, move), budget - price)) {
                return true;
            }
        }
        return false;
    }

    private int price(int move, int done) {
        if (hand.isRotation(move)) {
            return hand.price(move) + (done == 0 ? 0 : TURNING_ROUND_AMID);
        }
        int before = done - 1;
        while (before >= 0 && hand.isLetter(path[before], Face.U)) {
            before--;
        }
        boolean isReached = before >= 0 && hand.isLetter(path[before], Face.L);
        return hand.price(move) + (hand.isLetter(move, Face.L) && !isReached ? reaching : 0);
    }

    private void step(int[] from, int[] to, int hold, int move) {
        if (hand.isRotation(move)) {
            System.arraycopy(from, 0, to, 0, from.length);
            return;
        }
        int turn = hand.core(hold, move);
        for (int piece = 0; piece < 4; piece++) {
            to[piece] = PieceTurns.corner(turn, from[piece]);
        }
        for (int piece = 4; piece < 12; piece++) {
            to[piece] = PieceTurns.edge(turn, from[piece]);
        }
    }

    /** Turns that are surely still needed; stops looking once it is more than {@code enough}. */
    private int bound(int[] at, int enough) {
        int bound = CrossPlanner.TABLE.depth(at[8], at[9], at[10], at[11]);
        for (int place = 0; place < needed.length && bound <= enough; place++) {
            int slot = needed[place];
            bound = Math.max(bound, BESIDE[slot].depth(at[slot], at[slot + 4], at[ONE[slot]], at[OTHER[slot]]));
            for (int next = place + 1; next < needed.length && bound <= enough; next++) {
                int low = Math.min(slot, needed[next]);
                int high = Math.max(slot, needed[next]);
                bound = Math.max(bound, BOTH[low][high].depth(at[low], at[high], at[low + 4], at[high + 4]));
            }
        }
        return bound;
    }

    /** The same layer twice running, two layers of one axis (one could be a slice), or two rotations. */
    private boolean isIdle(int move, int done) {
        if (done == 0) {
            return false;
        }
        int last = path[done - 1];
        boolean isRotation = hand.isRotation(move);
        if (isRotation || hand.isRotation(last)) {
            return isRotation && hand.isRotation(last);
        }
        return hand.axis(move) == hand.axis(last);
    }
}
