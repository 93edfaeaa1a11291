package fermata.analysis.lookahead;

import fermata.analysis.event.Hand;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Turn;
import fermata.decoder.orientation.Orientation;

/**
 * Where each corner and edge may be, as far as the stickers seen so far tell.
 *
 * <p>A place excludes a piece if a sticker seen there is not the piece's. Beyond that only counting is used: each
 * piece is in one place, each place holds one piece. That twists, flips and parities of the whole cube must add up is
 * left out: nobody reckons so while turning. Immutable; one look costs about a thousand sticker comparisons.
 */
public final class PieceKnowledge {
    private static final Corner[] CORNERS = Corner.values();
    private static final Edge[] EDGES = Edge.values();

    private final Candidates corners;
    private final Candidates edges;

    private PieceKnowledge(Candidates corners, Candidates edges) {
        this.corners = corners;
        this.edges = edges;
    }

    /** Nothing known: every piece may be everywhere. */
    public static PieceKnowledge nothing() {
        return new PieceKnowledge(Candidates.all(8, 3), Candidates.all(12, 2));
    }

    /** What is known after also looking at the cube. */
    public PieceKnowledge seeing(CubeState state, Orientation hold, Hand hand, View view) {
        boolean[] seen = new boolean[54];
        for (int handPlace = 0; handPlace < 54; handPlace++) {
            seen[hold.placeSeen(handPlace)] = view.shows(hand, handPlace);
        }
        Candidates cornersLeft = corners.keeping((piece, place, twist) -> cornerFits(state, seen, piece, place, twist));
        Candidates edgesLeft = edges.keeping((piece, place, flip) -> edgeFits(state, seen, piece, place, flip));
        return new PieceKnowledge(
                cornersLeft.matched().markingSeen((piece, place, twist) -> stickersTell(seen, CORNERS[place])),
                edgesLeft.matched().markingSeen((piece, place, flip) -> stickersTell(seen, EDGES[place])));
    }

    /** The same knowledge after a turn: every piece known to be somewhere is known to be where the turn takes it. */
    public PieceKnowledge after(Turn turn) {
        CubeState move = CubeState.of(turn);
        int[] cornerTarget = new int[8];
        int[] cornerTwist = new int[8];
        for (Corner place : Corner.values()) {
            int from = move.cornerAt(place).ordinal();
            cornerTarget[from] = place.ordinal();
            cornerTwist[from] = move.twistAt(place);
        }
        int[] edgeTarget = new int[12];
        int[] edgeFlip = new int[12];
        for (Edge place : Edge.values()) {
            int from = move.edgeAt(place).ordinal();
            edgeTarget[from] = place.ordinal();
            edgeFlip[from] = move.flipAt(place);
        }
        return new PieceKnowledge(corners.moved(cornerTarget, cornerTwist), edges.moved(edgeTarget, edgeFlip));
    }

    /** What is known of a corner cubie. */
    public Knowing of(Corner cubie) {
        return corners.of(cubie.ordinal());
    }

    /** What is known of an edge cubie. */
    public Knowing of(Edge cubie) {
        return edges.of(cubie.ordinal());
    }

    private static boolean cornerFits(CubeState state, boolean[] seen, int piece, int place, int twist) {
        Corner at = CORNERS[place];
        Corner there = state.cornerAt(at);
        Corner asked = CORNERS[piece];
        for (int which = 0; which < 3; which++) {
            if (seen[at.sticker(which)]
                    && asked.faces().get(Math.floorMod(which - twist, 3))
                            != there.faces().get(Math.floorMod(which - state.twistAt(at), 3))) {
                return false;
            }
        }
        return true;
    }

    private static boolean edgeFits(CubeState state, boolean[] seen, int piece, int place, int flip) {
        Edge at = EDGES[place];
        Edge there = state.edgeAt(at);
        Edge asked = EDGES[piece];
        for (int which = 0; which < 2; which++) {
            if (seen[at.sticker(which)]
                    && asked.faces().get(which ^ flip) != there.faces().get(which ^ state.flipAt(at))) {
                return false;
            }
        }
        return true;
    }

    /** Two stickers of a corner fix the third, by the order of colours around it. */
    private static boolean stickersTell(boolean[] seen, Corner place) {
        int count = 0;
        for (int which = 0; which < 3; which++) {
            count += seen[place.sticker(which)] ? 1 : 0;
        }
        return count >= 2;
    }

    private static boolean stickersTell(boolean[] seen, Edge place) {
        return seen[place.sticker(0)] && seen[place.sticker(1)];
    }
}
