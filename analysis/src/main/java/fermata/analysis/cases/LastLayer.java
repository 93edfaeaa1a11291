package fermata.analysis.cases;

import fermata.analysis.goal.Pieces;
import fermata.decoder.cube.Corner;
import fermata.decoder.cube.CubeState;
import fermata.decoder.cube.Edge;

/**
 * The patterns of a last layer at U over two solved layers, as eight digits: for each of the places URF UF, UFL UL, ULB
 * UB, UBR UR the corner's digit and the edge's. A turn of U moves every pair of digits two places on, so patterns that
 * differ by such a turn are rotations of one string; the lexicographically least stands for all.
 */
final class LastLayer {
    private LastLayer() {}

    /** Twists and flips, the least over the four turns of U. */
    static String orientation(CubeState state) {
        StringBuilder digits = new StringBuilder(8);
        for (int place = 0; place < 4; place++) {
            digits.append(state.twistAt(Pieces.TOP_CORNERS.get(place)))
                    .append(state.flipAt(Pieces.TOP_EDGES.get(place)));
        }
        String least = digits.toString();
        for (int turns = 1; turns < 4; turns++) {
            String turned = digits.substring(2 * turns) + digits.substring(0, 2 * turns);
            least = turned.compareTo(least) < 0 ? turned : least;
        }
        return least;
    }

    /** Which piece is where, the least over a turn of U before and one after. */
    static String permutation(CubeState state) {
        String least = "9";
        for (int before = 0; before < 4; before++) {
            for (int after = 0; after < 4; after++) {
                StringBuilder digits = new StringBuilder(8);
                for (int place = 0; place < 4; place++) {
                    Corner corner = state.cornerAt(Pieces.TOP_CORNERS.get((place + before) % 4));
                    Edge edge = state.edgeAt(Pieces.TOP_EDGES.get((place + before) % 4));
                    digits.append((Pieces.TOP_CORNERS.indexOf(corner) + after) % 4)
                            .append((Pieces.TOP_EDGES.indexOf(edge) + after) % 4);
                }
                least = digits.compareTo(new StringBuilder(least)) < 0 ? digits.toString() : least;
            }
        }
        return least;
    }
}
