package fermata.rehearsal.planning;

import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Face;
import fermata.decoder.notation.Move;
import fermata.decoder.orientation.Orientation;
import fermata.decoder.search.FourPieces;
import fermata.decoder.search.PieceTurns;
import fermata.decoder.search.Slot;
import fermata.rehearsal.character.Handling;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Solves the D cross in the fewest turns and finds, over all such ways, the one the hand likes best: each turn as it
 * stands, as a wide turn of the other side, or after tilting the cube. The cross ends below.
 */
public final class CrossPlanner {
    public static final FourPieces TABLE = FourPieces.build(List.of(), Slot.CROSS);

    private static final int WAYS_LOOKED_AT = 60;

    private final HandMoves hand;
    private final List<int[]> ways = new ArrayList<>();
    private int[] path = new int[0];

    public CrossPlanner(Handling handling) {
        this.hand = HandMoves.forCross(handling);
    }

    /** A hand-frame way from the identity hold. */
    public Way plan(CubeState state) {
        int[] codes = codes(state);
        ways.clear();
        path = new int[depth(codes)];
        collect(codes, 0);
        Way best = null;
        for (int[] way : ways) {
            Way written = write(way);
            if (best == null || written.price < best.price) {
                best = written;
            }
        }
        return best;
    }

    private void collect(int[] codes, int done) {
        if (done == path.length) {
            ways.add(path.clone());
            return;
        }
        for (int turn = 0; turn < 18 && ways.size() < WAYS_LOOKED_AT; turn++) {
            int[] after = new int[4];
            for (int piece = 0; piece < 4; piece++) {
                after[piece] = PieceTurns.edge(turn, codes[piece]);
            }
            if (depth(after) == path.length - done - 1) {
                path[done] = turn;
                collect(after, done + 1);
            }
        }
    }

    /** Dynamic programming over holds: cheapest[hold] after the turns so far. */
    private Way write(int[] turns) {
        Way[] cheapest = new Way[24];
        cheapest[Orientation.IDENTITY.index()] = new Way(0, List.of());
        for (int turn : turns) {
            Way[] after = new Way[24];
            Way[] tilted = tilted(cheapest);
            for (int hold = 0; hold < 24; hold++) {
                for (int move = 0; tilted[hold] != null && move < hand.count; move++) {
                    if (hand.core(hold, move) == turn) {
                        offer(after, hand.next(hold, move), tilted[hold], move);
                    }
                }
            }
            cheapest = after;
        }
        Way[] ends = tilted(cheapest);
        Way best = null;
        for (Orientation hold : Orientation.all()) {
            Way end = ends[hold.index()];
            boolean isBelow = hold.coreAt(Face.D) == Face.D;
            if (isBelow && end != null && (best == null || end.price < best.price)) {
                best = end;
            }
        }
        return best;
    }

    private Way[] tilted(Way[] from) {
        Way[] after = Arrays.copyOf(from, from.length);
        for (int hold = 0; hold < 24; hold++) {
            for (int move = 0; from[hold] != null && move < hand.count; move++) {
                if (hand.isRotation(move)) {
                    offer(after, hand.next(hold, move), from[hold], move);
                }
            }
        }
        return after;
    }

    private void offer(Way[] ways, int hold, Way before, int move) {
        int price = before.price + hand.price(move);
        if (ways[hold] == null || price < ways[hold].price) {
            List<Move> moves = new ArrayList<>(before.moves);
            moves.add(hand.move(move));
            ways[hold] = new Way(price, Collections.unmodifiableList(moves));
        }
    }

    private static int[] codes(CubeState state) {
        return Slot.CROSS.stream()
                .mapToInt(edge -> PieceTurns.codeOf(state, edge))
                .toArray();
    }

    private static int depth(int[] codes) {
        return TABLE.depth(codes[0], codes[1], codes[2], codes[3]);
    }

    /** Moves and what they cost. */
    record Way(int price, List<Move> moves) {}
}
