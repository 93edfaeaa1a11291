package fermata.decoder.solver;

import fermata.decoder.cube.Face;
import fermata.decoder.cube.Turn;

/**
 * All move and pruning tables: about 7 MB, built in well under a second on first use and kept. Immutable once built;
 * the class loader's lock makes the first use thread-safe.
 */
final class Tables {
    /** The turns of phase 1, by {@link Turn#index()}. */
    static final Turn[] ALL = Turn.all();

    /** The turns of phase 2: any of U and D, half turns of the rest. */
    static final Turn[] REDUCED = reduced();

    static final MoveTable TWIST = MoveTable.build(Coordinates.TWISTS, ALL, Coordinates::twist);
    static final MoveTable FLIP = MoveTable.build(Coordinates.FLIPS, ALL, Coordinates::flip);
    static final MoveTable SLICE = MoveTable.build(Coordinates.SLICES, ALL, Coordinates::slice);
    static final MoveTable CORNERS = MoveTable.build(Coordinates.PERMUTATIONS_OF_8, REDUCED, Coordinates::corners);
    static final MoveTable OUTER_EDGES =
            MoveTable.build(Coordinates.PERMUTATIONS_OF_8, REDUCED, Coordinates::outerEdges);
    static final MoveTable MIDDLE_EDGES =
            MoveTable.build(Coordinates.PERMUTATIONS_OF_4, REDUCED, Coordinates::middleEdges);

    static final PruningTable TWIST_AND_SLICE = PruningTable.build(TWIST, SLICE);
    static final PruningTable FLIP_AND_SLICE = PruningTable.build(FLIP, SLICE);
    static final PruningTable CORNERS_AND_MIDDLE = PruningTable.build(CORNERS, MIDDLE_EDGES);
    static final PruningTable EDGES_AND_MIDDLE = PruningTable.build(OUTER_EDGES, MIDDLE_EDGES);

    private Tables() {}

    private static Turn[] reduced() {
        Turn[] turns = new Turn[10];
        int count = 0;
        for (Turn turn : Turn.all()) {
            if (turn.face() == Face.U || turn.face() == Face.D || turn.quarters() == 2) {
                turns[count++] = turn;
            }
        }
        return turns;
    }
}
