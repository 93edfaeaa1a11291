package fermata.decoder.search;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;
import fermata.decoder.cube.Turn;

/**
 * Where single pieces go. A piece's code is three times its place plus its twist (corner) or two times its place plus
 * its flip (edge): 24 codes for either kind, so four pieces together are one number under 24^4.
 */
public final class PieceTurns {
    static final int CODES = 24;

    private static final Corner[] CORNERS = Corner.values();
    private static final Edge[] EDGES = Edge.values();
    private static final byte[][] CORNER = new byte[18][CODES];
    private static final byte[][] EDGE = new byte[18][CODES];

    static {
        for (Turn turn : Turn.all()) {
            CubeState state = CubeState.of(turn);
            for (Corner place : CORNERS) {
                for (int twist = 0; twist < 3; twist++) {
                    CORNER[turn.index()][state.cornerAt(place).ordinal() * 3 + twist] =
                            (byte) (place.ordinal() * 3 + (twist + state.twistAt(place)) % 3);
                }
            }
            for (Edge place : EDGES) {
                for (int flip = 0; flip < 2; flip++) {
                    EDGE[turn.index()][state.edgeAt(place).ordinal() * 2 + flip] =
                            (byte) (place.ordinal() * 2 + (flip ^ state.flipAt(place)));
                }
            }
        }
    }

    private PieceTurns() {}

    public static int corner(int turn, int code) {
        return CORNER[turn][code];
    }

    public static int edge(int turn, int code) {
        return EDGE[turn][code];
    }

    public static int codeOf(CubeState state, Corner cubie) {
        Corner place = state.placeOf(cubie);
        return place.ordinal() * 3 + state.twistAt(place);
    }

    public static int codeOf(CubeState state, Edge cubie) {
        Edge place = state.placeOf(cubie);
        return place.ordinal() * 2 + state.flipAt(place);
    }

    static int home(Corner cubie) {
        return cubie.ordinal() * 3;
    }

    static int home(Edge cubie) {
        return cubie.ordinal() * 2;
    }
}
