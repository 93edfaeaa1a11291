package fermata.decoder.solver;

import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;

/**
 * The numbers a state is searched by. Phase 1 needs twist, flip and where the four middle-layer edges are; phase 2
 * the three permutations that are left once those are zero. Every coordinate of the solved state is 0.
 */
final class Coordinates {
    static final int TWISTS = 2187;
    static final int FLIPS = 2048;
    static final int SLICES = 495;
    static final int PERMUTATIONS_OF_8 = 40_320;
    static final int PERMUTATIONS_OF_4 = 24;

    private static final Corner[] CORNERS = Corner.values();
    private static final Edge[] EDGES = Edge.values();
    private static final int FIRST_MIDDLE_EDGE = Edge.FR.ordinal();
    private static final int[][] CHOOSE = choose();

    private Coordinates() {}

    /** Twists of the first seven corners in base three: 0..2186. */
    static int twist(CubeState state) {
        int number = 0;
        for (int place = 0; place < 7; place++) {
            number = number * 3 + state.twistAt(CORNERS[place]);
        }
        return number;
    }

    /** Flips of the first eleven edges in base two: 0..2047. */
    static int flip(CubeState state) {
        int number = 0;
        for (int place = 0; place < 11; place++) {
            number = number * 2 + state.flipAt(EDGES[place]);
        }
        return number;
    }

    /**
     * Which four places the middle-layer edges are in, in whatever order: 0..494, 0 when all are in the middle layer.
     */
    static int slice(CubeState state) {
        int number = 0;
        int seen = 0;
        for (int place = 11; place >= 0; place--) {
            if (state.edgeAt(EDGES[place]).ordinal() >= FIRST_MIDDLE_EDGE) {
                seen++;
                number += CHOOSE[11 - place][seen];
            }
        }
        return number;
    }

    /** The order of the eight corners: 0..40319. */
    static int corners(CubeState state) {
        int[] values = new int[8];
        for (int place = 0; place < 8; place++) {
            values[place] = state.cornerAt(CORNERS[place]).ordinal();
        }
        return rank(values);
    }

    /** The order of the eight U and D edges, in phase 2 only: 0..40319. */
    static int outerEdges(CubeState state) {
        int[] values = new int[8];
        for (int place = 0; place < 8; place++) {
            values[place] = state.edgeAt(EDGES[place]).ordinal();
        }
        return rank(values);
    }

    /** The order of the four middle-layer edges, in phase 2 only: 0..23. */
    static int middleEdges(CubeState state) {
        int[] values = new int[4];
        for (int place = 0; place < 4; place++) {
            values[place] = state.edgeAt(EDGES[FIRST_MIDDLE_EDGE + place]).ordinal() - FIRST_MIDDLE_EDGE;
        }
        return rank(values);
    }

    /** Lexicographic number of a permutation; the identity is 0. */
    static int rank(int[] values) {
        int rank = 0;
        for (int place = 0; place < values.length; place++) {
            int smaller = 0;
            for (int later = place + 1; later < values.length; later++) {
                if (values[later] < values[place]) {
                    smaller++;
                }
            }
            rank = rank * (values.length - place) + smaller;
        }
        return rank;
    }

    private static int[][] choose() {
        int[][] table = new int[12][5];
        for (int of = 0; of < 12; of++) {
            table[of][0] = 1;
            for (int take = 1; take < 5 && of > 0; take++) {
                table[of][take] = table[of - 1][take - 1] + table[of - 1][take];
            }
        }
        return table;
    }
}
